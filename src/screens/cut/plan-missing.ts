import { html } from 'lit';
import type { InputPath } from '../../core/context';
import { JOB_FIELDS } from '../../core/job';
import { FIELDS, type FieldName } from '../../core/machine';
import { planText as t } from '../../text/plan';
import { pathLabel } from '../../text/why';

/** Where a person enters or chooses what a path names. */
const placeOf = (path: InputPath): string => {
  const [room = '', name = ''] = path.split('.');
  if (room === 'machine')
    return FIELDS[name as FieldName].kind === 'number'
      ? `#/enter/machine/${name}`
      : `#/machine/field/${name}`;
  if (name === 'thread') return '#/threads/find';
  return Object.hasOwn(JOB_FIELDS, name) ? `#/enter/job/${name}` : '#/cut/work';
};

/** A key for each thing that is missing. */
export const missingKeys = (paths: readonly InputPath[]) =>
  html`<p class="unknown"><strong>${t.needs}</strong></p>
    <div class="stack">
      ${paths.map(
        (path) => html`<a class="key left solid" href=${placeOf(path)}>${t.enter(pathLabel(path))}</a>`,
      )}
    </div>`;
