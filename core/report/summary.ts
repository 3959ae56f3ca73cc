/** The analysis in words, for a terminal. */

import type { Analysis } from '../analysis/analyze';
import { METHODS } from '../decay/methods';
import type { LengthUnits } from '../quantity/length';
import { measuresIn } from '../quantity/measures';
import { onOneLine } from '../room/fault';
import type { Project } from '../room/project';

/** Plain text of at most 100 columns where names are short, with its figures in `units`. */
export function summary(
  project: Project,
  analysis: Analysis,
  units: LengthUnits = 'metric',
): string {
  const { length, rounded, area, volume } = measuresIn(units);
  const { size } = project.room;
  const { modes, decay, geometry } = analysis;
  const counts = { axial: 0, tangential: 0, oblique: 0 };
  for (const mode of modes.shell) counts[mode.kind]++;
  const lines = [
    project.name,
    `  Shell       ${length(size.width)} wide, ${length(size.length)} long, ${length(size.height)} high`,
    `  Free space  ${volume(geometry.volumeM3)}, ${area(geometry.surfaceM2)} of surface`,
    `  Modes       ${modes.shell.length} to 200 Hz: ${counts.axial} axial, ${counts.tangential} tangential, ${counts.oblique} oblique${modes.exactShape ? '' : ' (plain shell)'}`,
    ...builtLine(modes),
    `  Schroeder   ${modes.schroederHz === null ? 'unknown' : `${modes.schroederHz.toFixed(0)} Hz`}`,
    '',
    '  Decay, s    Sabine  Eyring  corridor',
    ...decay.bands.map(
      (band) =>
        `  ${`${band.hz} Hz`.padEnd(12)}${seconds(band.sabineS)}  ${seconds(band.eyringS)}  ${band.lowS === null || band.highS === null ? 'none' : `${band.lowS.toFixed(2)} to ${band.highS.toFixed(2)}`}`,
    ),
    adviceLine(decay.advice),
    '',
    '  Loudspeaker  azimuth  elevation     distance     delay     level  in range',
    ...analysis.speakers.map(
      (speaker) =>
        `  ${speaker.channel.padEnd(11)}${speaker.azimuthDeg.toFixed(1).padStart(9)}${speaker.elevationDeg.toFixed(1).padStart(11)}${rounded(speaker.distanceM).padStart(13)}${`${speaker.delayMs.toFixed(2)} ms`.padStart(10)}${`${speaker.levelDb.toFixed(1)} dB`.padStart(10)}  ${speaker.inRange ? 'yes' : 'no'}`,
    ),
    ...analysis.later.map(
      (speaker) =>
        `  ${speaker.channel.padEnd(11)}${speaker.azimuthDeg.toFixed(1).padStart(9)}${speaker.elevationDeg.toFixed(1).padStart(11)}${rounded(speaker.distanceM).padStart(13)}  for later (${speaker.name}): ${speaker.inRange ? 'in range' : 'not in range'}`,
    ),
    '',
    analysis.findings.length === 0 ? '  No findings.' : `  Findings (${analysis.findings.length})`,
    ...analysis.findings.flatMap((finding) => [
      `  ${finding.severity.toUpperCase().padEnd(8)} ${finding.where}: ${finding.message}`,
      `           Source: ${finding.source}.`,
      ...(finding.caution ? [`           Caution: ${finding.caution}`] : []),
      ...finding.remedies.map((remedy) => `           Try: ${remedy.text}`),
    ]),
    '',
  ];
  return lines.map(onOneLine).join('\n');
}

/** The modes as built, where they were solved. */
function builtLine({ shaped, shapedErrorPercent }: Analysis['modes']): readonly string[] {
  if (!shaped) return [];
  const [first] = shaped;
  const shift =
    first?.shiftHz === undefined || first.shiftHz === null
      ? ''
      : ` (${first.shiftHz < 0 ? '-' : '+'}${Math.abs(first.shiftHz).toFixed(1)} Hz)`;
  const mixed = shaped.filter((mode) => mode.likeShell === null).length;
  return [
    `  As built    ${shaped.length} to 200 Hz, the lowest ${first?.frequencyHz.toFixed(1) ?? '-'} Hz${shift}, ${mixed} mixed; each within ${(shapedErrorPercent ?? 0).toFixed(2)} %`,
  ];
}

function adviceLine({ method, ratio, limit, hz }: Analysis['decay']['advice']): string {
  const pairs =
    ratio === null || hz === null
      ? 'no figures'
      : `pairs of faces absorb up to ${ratio.toFixed(1)} to 1 at ${hz} Hz, even is ${limit} to 1`;
  return `  Read        ${METHODS[method].name} (${pairs})`;
}

const seconds = (value: number | null): string =>
  (value === null ? '-' : value.toFixed(2)).padStart(6);
