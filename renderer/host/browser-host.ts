import { carriedFiles } from './carried-files';
import { dataFiles } from './data-files';
import { fileAccess } from './file-access';
import type { Host } from './host';
import { forgetUnreadable, keepWork, keptWork } from './autosave-in-browser';
import { pickedFiles } from './picked-files';

/** The host of the browser edition; what the browser can do with files is found out once. */
export function createBrowserHost(): Host {
  const access = fileAccess();
  const files = access === null ? carriedFiles() : pickedFiles(access);
  return {
    edition: 'browser',
    ...files,
    ...dataFiles(access),
    print() {
      window.print();
      return Promise.resolve({ kind: 'done', value: null });
    },
    keepAutosave: keepWork,
    readAutosave: keptWork,
    forgetUnreadable,
    onMenuCommand: () => () => undefined,
  };
}
