/** The bar over everything: the file, undo and redo by name, units and appearance. */

import type { ReactElement } from 'react';
import { redoName, undoName } from '../state/history';
import { EXAMPLES, type ExampleId } from '../state/examples';
import type { DocumentCommands } from '../state/document-commands';
import { useSession } from '../state/session';
import type { Appearance } from '../state/preferences';
import { Choice } from '../kit/controls/Choice';
import { useGlossary } from '../glossary/glossary-store';

const NEXT_APPEARANCE: Readonly<Record<Appearance, Appearance>> = {
  system: 'light',
  light: 'dark',
  dark: 'system',
};
const APPEARANCE_NAMES: Readonly<Record<Appearance, string>> = {
  system: 'Auto',
  light: 'Light',
  dark: 'Dark',
};

export function TopBar({ commands }: { readonly commands: DocumentCommands }): ReactElement {
  const showGlossary = useGlossary((glossary) => glossary.show);
  return (
    <header className="head">
      <h1>Roomwright</h1>
      <div className="head-group">
        <button type="button" onClick={commands.newRoom}>
          New
        </button>
        <button type="button" onClick={() => void commands.open()}>
          Open
        </button>
        <button type="button" onClick={() => void commands.save()}>
          Save
        </button>
        <button type="button" onClick={() => void commands.saveAs()}>
          Save as
        </button>
        <ExampleMenu commands={commands} />
      </div>
      <StepButtons />
      <div className="head-group head-right">
        {commands.edition === 'browser' ? (
          <span
            className="edition"
            title="This page is served from this computer only. The desktop program has the same room files and its own windows and menus."
          >
            Browser edition
          </span>
        ) : null}
        <button type="button" aria-haspopup="dialog" onClick={() => showGlossary()}>
          Words
        </button>
        <UnitsChoice />
        <AppearanceButton />
      </div>
    </header>
  );
}

function ExampleMenu({ commands }: { readonly commands: DocumentCommands }): ReactElement {
  return (
    <select
      className="example-menu"
      aria-label="Open an example room"
      value=""
      onChange={(event) => {
        const example = EXAMPLES.find((known) => known.id === event.currentTarget.value);
        if (example) commands.openExample(example.id satisfies ExampleId);
      }}
    >
      <option value="">Examples</option>
      {EXAMPLES.map((example) => (
        <option key={example.id} value={example.id}>
          {example.title}: {example.about}
        </option>
      ))}
    </select>
  );
}

function StepButtons(): ReactElement {
  const back = useSession((session) => undoName(session.work));
  const forth = useSession((session) => redoName(session.work));
  const undo = useSession((session) => session.undo);
  const redo = useSession((session) => session.redo);
  return (
    <div className="head-group steps">
      <button type="button" disabled={back === null} onClick={undo} title="Ctrl+Z">
        ↶ Undo<span className="step-name">{back === null ? '' : ` ${back}`}</span>
      </button>
      <button type="button" disabled={forth === null} onClick={redo} title="Ctrl+Shift+Z or Ctrl+Y">
        ↷ Redo<span className="step-name">{forth === null ? '' : ` ${forth}`}</span>
      </button>
    </div>
  );
}

function UnitsChoice(): ReactElement {
  const units = useSession((session) => session.units);
  const setUnits = useSession((session) => session.setUnits);
  return (
    <Choice
      legend="Units"
      hideLegend
      options={[
        { value: 'metric', label: 'm', title: 'metres' },
        { value: 'imperial', label: 'ft in', title: 'feet, inches and fractions' },
      ]}
      value={units}
      onChange={setUnits}
    />
  );
}

function AppearanceButton(): ReactElement {
  const appearance = useSession((session) => session.appearance);
  const setAppearance = useSession((session) => session.setAppearance);
  return (
    <button
      type="button"
      aria-label={`Appearance: ${APPEARANCE_NAMES[appearance]}. Change.`}
      title="Light, dark, or as the system has it"
      onClick={() => setAppearance(NEXT_APPEARANCE[appearance])}
    >
      ◐ {APPEARANCE_NAMES[appearance]}
    </button>
  );
}
