import type { HostOutcome } from '../../renderer/host/host';

/** The part of Electron's web contents that prints. */
export interface PrintingContents {
  print(
    options: { silent: boolean; printBackground: boolean },
    done: (success: boolean, failureReason: string) => void,
  ): void;
}

/** Print the page by the system's print dialog. */
export function printPage(contents: PrintingContents | null): Promise<HostOutcome<null>> {
  if (contents === null) return Promise.resolve(failure('there is no window'));
  return new Promise((resolve) => {
    try {
      contents.print({ silent: false, printBackground: true }, (success, reason) => {
        if (success) resolve({ kind: 'done', value: null });
        else resolve(/cancel/i.test(reason) ? { kind: 'cancelled' } : failure(reason));
      });
    } catch (error) {
      resolve(failure(error instanceof Error ? error.message : String(error)));
    }
  });
}

function failure(reason: string): HostOutcome<null> {
  const said = reason === '' ? 'the printer did not answer' : reason;
  const remedy = 'Check that a printer, or printing to a PDF file, is set up, and print again.';
  return { kind: 'failed', sentence: `Could not print: ${said}. ${remedy}` };
}
