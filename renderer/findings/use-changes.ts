import { useEffect, useRef, useState } from 'react';
import type { Finding } from '../../core/findings/finding';
import { changesText } from './changes-text';

/** A drag changes the findings many times a second: only where it has come to rest is told. */
const REST_MS = 900;

/** What the last change of the room did to the findings, for a live region. */
export function useChanges(findings: readonly Finding[]): string {
  const told = useRef(findings);
  const [text, setText] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => {
      const change = changesText(told.current, findings);
      told.current = findings;
      if (change !== '') setText(change);
    }, REST_MS);
    return () => clearTimeout(timer);
  }, [findings]);
  return text;
}
