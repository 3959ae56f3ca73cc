/** Trying out what findings propose. */

import { analyze, type Analysis } from '../../../core/analysis/analyze';
import type { Finding } from '../../../core/findings/finding';
import { applyEdit, type Edit } from '../../../core/room/edits';
import { openRoom, saveRoom } from '../../../core/room/open-room';
import type { Project } from '../../../core/room/project';

export const findingIds = (project: Project): readonly string[] =>
  analyze(project).findings.map((finding) => finding.id);

export function findingOf(project: Project, id: string): Finding {
  const found = analyze(project).findings.find((finding) => finding.id === id);
  if (!found) throw new Error(`No finding ${id} among: ${findingIds(project).join(', ')}`);
  return found;
}

export interface Trial {
  readonly edit: Edit;
  readonly project: Project;
  readonly analysis: Analysis;
}

/** Every change that the finding can make itself, made; each must give a file that opens again. */
export function tried(project: Project, finding: Finding): readonly Trial[] {
  return finding.remedies.flatMap(({ edit, text }) => {
    if (!edit) return [];
    const changed = applyEdit(project, edit);
    if (!openRoom(saveRoom(changed)).ok)
      throw new Error(`"${text}" leaves a room that is refused.`);
    return [{ edit, project: changed, analysis: analyze(changed) }];
  });
}
