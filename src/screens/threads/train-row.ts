import { html, type TemplateResult } from 'lit';
import { mountedOf } from '../../core/machine';
import { standingWord } from '../../text/standing';
import { stagesText } from '../../text/train-words';
import { trainsKey, trainRowText as t } from '../../text/pages';
import type { App } from '../../state';

/** On a machine with change gears: the train mounted, how it stands to the lead wanted, and the key to the trains. */
export const trainRow = (app: App): TemplateResult => {
  const held = app.sheet.get('ratioHeld');
  const now = app.profile && mountedOf(app.profile);
  const standing = held.standing ?? 'unknown';
  const note = held.value ? (held.value.exact ? t.exact : t.off(held.value.ppm)) : t.notKnown;
  return html`<ls-row
      .label=${t.label}
      .note=${note}
      .standing=${standing}
      .word=${standingWord[standing]}
      why="Why"
      figure="ratioHeld"
      ><span class="figure">${now ? stagesText(now.stages) : t.notKnown}</span></ls-row
    >
    <div class="stack apart"><a class="key left" href="#/threads/trains">${trainsKey}</a></div>`;
};
