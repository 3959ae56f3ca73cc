/** Text as it may stand in XML: markup escaped, and what no XML may hold left out. */

const MARKS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** Control characters, signs that turn the direction of writing, and halves of pairs alone. */
const UNFIT =
  /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

export const escapedInXml = (text: string): string =>
  text.replace(UNFIT, ' ').replace(/[&<>"]/g, (mark) => MARKS[mark] ?? mark);
