/** The pages that are sent in place of the program: a heading and what to do, no style, no script. */

export function wayInPage(): string {
  return plainPage('This browser has not been let in yet', [
    'Press Enter in the terminal that Roomwright runs in, and open the whole address that it ' +
      'prints, with what follows <code>?token=</code>. Each address works once; a copy or a ' +
      'bookmark of it does not.',
    'Where Roomwright was started without a terminal, the address that it printed holds until it ' +
      'is stopped. Where no address works any more, stop the program, start it again, and open ' +
      'the new one.',
  ]);
}

export function notFoundPage(): string {
  return plainPage('There is nothing at this address', [
    'The program is at <a href="/">its first page</a>.',
  ]);
}

function plainPage(heading: string, paragraphs: readonly string[]): string {
  const body = paragraphs.map((text) => `<p>${text}</p>`).join('\n');
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>Roomwright</title></head>
<body>
<h1>${heading}</h1>
${body}
</body>
</html>
`;
}
