import { html, nothing, css } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import { feedForRoughness, feedPerMinute, finish, meanRoughness } from '../../core/drive/feeds';
import { MARGIN_NONE, standingOf } from '../../core/figures';
import { FEED_FIELD } from '../../core/job';
import { hasGears, readNumber } from '../../core/machine';
import {
  compare,
  div,
  equal,
  inBase,
  leadHigh,
  MM_PER_INCH,
  mul,
  ratio,
  type Ratio,
  type Stated,
} from '../../core/quantity';
import { feedText as t } from '../../text/feed';
import { decimal, mark, statedText } from '../../text/numbers';
import { standingWord } from '../../text/standing';
import type { App } from '../../state';

/** Steps of Ra met on drawings, µm (ISO 1302, roughness grades N6 to N10). */
const RA = [ratio(4, 5), ratio(8, 5), ratio(16, 5), ratio(63, 10), ratio(25, 2)];
const KEY = 'feed.perRev';

const inches = (mm: Ratio, places: number): string => `${decimal(div(mm, MM_PER_INCH), places)} in`;

/** Turning feeds: per rev, per minute, the finish by geometry, and the feed for a finish. */
@customElement('ls-feed')
export class FeedScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      ls-row {
        inline-size: 100%;
      }
    `,
  ];

  /** What was entered here, else the job's own feed. */
  private get feed(): Stated | null {
    const entered = this.app.readings.get(KEY);
    const { thread } = this.app.job;
    return entered ?? (thread?.kind === 'feed' ? thread.perRev : null);
  }

  private usual(feed: Stated | null) {
    return html`<h2 class="label">${t.usual}</h2>
      <div class="grid3">
        ${(FEED_FIELD.suggest ?? []).map((text) => {
          const read = readNumber(FEED_FIELD, text, 'mm');
          if (!read.ok) return nothing;
          const pressed = feed !== null && equal(inBase(feed), inBase(read.value));
          return html`<button
            class="key"
            aria-pressed=${pressed}
            @click=${() => void this.app.readings.set(KEY, read.value)}
          >
            ${statedText(read.value)}
          </button>`;
        })}
      </div>
      <a class="key left" href="#/enter/reading/${KEY}"
        >${feed ? `${t.perRev}: ${statedText(feed)}` : t.enter}</a
      >`;
  }

  /** One feed per rev as speed of the carriage, with its standing to what the carriage bears. */
  private minuteRow(label: string, perRev: Ratio, note = '') {
    const { rpm } = this.app.job;
    if (!rpm) return html`<ls-row .label=${label} .value=${t.notKnown} .note=${t.noRpm}></ls-row>`;
    const minute = feedPerMinute(perRev, rpm);
    const most = this.app.profile?.carriageMax ?? null;
    const standing = most ? standingOf(minute, mul(inBase(most), 60), MARGIN_NONE) : 'unknown';
    const limit = most ? t.carriage(statedText(most)) : t.carriageUnknown;
    return html`<ls-row
      .label=${label}
      .value=${decimal(minute, compare(minute, 10) < 0 ? 2 : 1)}
      unit="mm/min"
      .note=${`${inches(minute, 2)}/min ${t.at(decimal(rpm, 1))} · ${note || limit}`}
      .standing=${standing}
      .word=${standingWord[standing]}
    ></ls-row>`;
  }

  private rates(feed: Stated) {
    const mm = inBase(feed);
    return html`<div>
      <ls-row .label=${t.perRev} .value=${decimal(mm, 4)} unit="mm/rev" .note="${inches(mm, 5)}/rev"></ls-row>
      ${this.minuteRow(t.perMinute, mm)}
    </div>`;
  }

  private asJob(feed: Stated) {
    const { thread } = this.app.job;
    const gears = this.app.profile && hasGears(this.app.profile);
    const used = thread?.kind === 'feed' && equal(inBase(thread.perRev), inBase(feed));
    return html`${
      used
        ? html`<p class="note">${t.used}</p>`
        : html`<button
              class="key"
              @click=${() => void this.app.chooseThread({ kind: 'feed', perRev: feed }, 1)}
            >
              ${t.use}
            </button>
            <p class="note">${t.useHelp}</p>`
    }
    ${used && gears ? html`<a class="key left" href="#/threads/trains">${t.trains}</a>` : nothing}`;
  }

  /** What the drive or the train mounted does now, looked at as a feed. */
  private now() {
    const train = this.app.sheet.get('train').value;
    if (train?.kind === 'wheels') {
      const value = `${decimal(train.cuts, 4)}`;
      return html`<div>
        <ls-row .label=${t.train} .value=${value} unit="mm/rev" why="Why" figure="train"></ls-row>
        ${this.minuteRow(t.perMinute, train.cuts)}
      </div>`;
    }
    const lead = this.app.sheet.get('lead').value;
    return lead
      ? html`<p class="note">${t.ofLead}</p>
          <div>${this.minuteRow(t.perMinute, leadHigh(lead))}</div>`
      : nothing;
  }

  private finish(feed: Stated | null) {
    const { noseKind, noseSize } = this.app.job;
    const nose = noseSize && inBase(noseSize);
    const um = (mm: Ratio): string => decimal(mul(mm, 1000), 2);
    const f = feed && nose ? finish(inBase(feed), nose) : null;
    return html`<h2>${t.finish}</h2>
      <a class="key left" href="#/enter/job/noseSize"
        >${noseSize ? `${t.nose}: ${statedText(noseSize)}` : t.enterNose}</a
      >
      ${noseSize && noseKind !== null && noseKind !== 'radius' ? html`<p class="note">${t.noseKind}</p>` : nothing}
      ${
        f === null
          ? html`<div><ls-row .label=${t.rt} .value=${t.notKnown}></ls-row></div>`
          : f.ok
            ? html`<div>
                <ls-row .label=${t.rt} .value=${um(f.rt)} unit="µm" .note=${t.rtNote}></ls-row>
                <ls-row .label=${t.ra} .value=${um(meanRoughness(f.rt))} unit="µm" .note=${t.raNote}></ls-row>
              </div>`
            : html`<p class="over" role="status"><strong>${t.pastNose}</strong></p>`
      }
      ${
        nose
          ? html`<h3>${t.forRa}</h3>
              <div>
                ${RA.map((ra) => {
                  // Rounded down: a hair finer, never coarser.
                  const feedMm = Math.floor(feedForRoughness(div(ra, 1000), nose) * 1000) / 1000;
                  return html`<ls-row
                    .label=${t.raOf(decimal(ra, 1))}
                    .value=${feedMm.toFixed(3).replace('.', mark())}
                    unit="mm/rev"
                  ></ls-row>`;
                })}
              </div>
              <p class="note">${t.raSteps} ${t.raNote}</p>`
          : nothing
      }`;
  }

  override render() {
    const { feed } = this;
    return html`<h1>${t.title}</h1>
      ${feed ? this.rates(feed) : nothing} ${this.usual(feed)} ${feed ? this.asJob(feed) : nothing}
      ${this.app.job.rpm ? nothing : html`<a class="key left" href="#/enter/job/rpm">${t.setRpm}</a>`}
      ${this.now()} ${this.finish(feed)}
      <a class="key" href="#/speed">${t.back}</a>`;
  }
}
