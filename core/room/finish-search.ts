/** Finding a finish by the words that people use for it, on either side of the ocean. */

import type { Finish } from './finish';

/** Words for one thing: whoever types one of a row finds what is named by any other of it. */
const SAME: readonly (readonly string[])[] = [
  ['drywall', 'plasterboard', 'gypsum board', 'gyproc', 'wallboard', 'gypsum'],
  ['fiberglass', 'fibreglass', 'glass fibre', 'glass wool'],
  ['mineral wool', 'rock wool', 'stone wool', 'mineral fibre'],
  ['batt', 'insulation', 'wool slab', 'blanket'],
  ['curtain', 'drape', 'drapes', 'drapery', 'velour', 'velvet'],
  ['osb', 'oriented strand board', 'sheathing'],
  ['chipboard', 'particle board'],
  ['lvp', 'vinyl', 'linoleum', 'lino'],
  ['hardwood', 'wood floor', 'parquet', 'floor boards'],
  ['cinder block', 'concrete block', 'cmu', 'breeze block'],
  ['drop ceiling', 'suspended ceiling', 'ceiling tile', 'acoustic tile', 'in a grid'],
  ['rug', 'carpet'],
  ['berber', 'loop pile'],
  ['pad', 'underlay', 'underlayment'],
  ['slats', 'boards with'],
  ['pegboard', 'perforated'],
  ['paneling', 'panelling', 'wooden lining'],
  ['beadboard', 'tongue and groove', 'boarding'],
  ['window', 'glass, ordinary window', 'glazing'],
  ['on center', 'on centre', 'o.c.', 'centres'],
  ['acoustic foam', 'foam'],
];

/** Small letters, one spelling of what is spelled in two ways, no marks. */
function plain(text: string): string {
  return text
    .toLowerCase()
    .replaceAll('fiber', 'fibre')
    .replaceAll('center', 'centre')
    .replaceAll('gray', 'grey')
    .replaceAll('moulding', 'molding')
    .replace(/(\d) *(?:in\.?|inch|inches|″|")(?![a-z])/g, '$1"')
    .replace(/(\d) *mm\b/g, '$1 mm')
    .replace(/\b(\d)\s*[x×]\s*(\d)/g, '$1x$2')
    .replace(/([a-z])-(?=[a-z])/g, '$1 ')
    .replace(/[(),;:]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Each word with the mark of its row, longest first: `glass fibre` is seen before `glass`. */
const MARKS: readonly (readonly [string, string])[] = SAME.flatMap((row, i) =>
  row.map((word) => [plain(word), `#${i}#`] as const),
).sort(([a], [b]) => b.length - a.length);

const hays = new WeakMap<Finish, string>();

/** All that can be found in a finish: its names in both systems, other words for them, and their marks. */
function hayOf(finish: Finish): string {
  const known = hays.get(finish);
  if (known !== undefined) return known;
  const { metric, imperial } = finish.names;
  const own = ` ${plain(`${metric} ${imperial} ${finish.category}`)} ${plain(finish.id)} `;
  const marks = new Set(MARKS.filter(([word]) => own.includes(word)).map(([, mark]) => mark));
  const others = MARKS.filter(([, mark]) => marks.has(mark)).map(([word]) => word);
  const hay = `${own}${[...others, ...marks].join(' ')} `;
  hays.set(finish, hay);
  return hay;
}

/** The finishes that have every word of `query` in their names or as another word for what they are. */
export function findFinishes(query: string, finishes: readonly Finish[]): readonly Finish[] {
  let text = ` ${plain(query)} `;
  for (const [word, mark] of MARKS) text = text.replaceAll(` ${word} `, ` ${mark} `);
  const words = text.split(' ').filter((word) => word !== '');
  return finishes.filter((finish) => {
    const hay = hayOf(finish);
    // What has a figure in it is found from its beginning: "2" not in "12"; words anywhere.
    return words.every((word) => hay.includes(/\d/.test(word) ? ` ${word}` : word));
  });
}
