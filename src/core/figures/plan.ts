import type { InputPath } from '../context';
import { dialOf, type Dial } from '../cut/dial';
import { pointOf } from '../cut/chip';
import * as infeeds from '../cut/infeed';
import { LEAST_PASS, springRubs, usualPasses, usualSprings } from '../cut/materials';
import { passesOf, type CutPlan, type PlanChoice } from '../cut/plan';
import { chipsOf, depthsBy, planPasses } from '../cut/passes';
import { inBase, leadNumber, toNumber, type Stated } from '../quantity';
import { opening, radians } from '../thread/groove';
import { noseFor, toolForm } from '../thread/tool';
import { define, withheld, type Figure } from './define';
import { planDepth } from './plan-depth';
import { planSpeed, planTime } from './plan-speed';
import { noDiameter } from './thread';
import { approx, exact, type Term } from './why';

const mm = (s: Stated): number => toNumber(inBase(s));
const FIRST_PASS = { hss: 0.15, carbide: 0.2 } as const;

/**
 * The plan of passes in the terms of the handwheels' dials. What isn't chosen is taken as is usual and named in
 * `assumed`; what isn't known withholds the plan.
 */
export const plan = define({
  reads: [
    'job.side',
    'job.hand',
    'job.starts',
    'job.classId',
    'job.noseKind',
    'job.noseSize',
    'job.blank',
    'job.material',
    'job.toolMaterial',
    'job.infeed',
    'job.topSlide',
    'job.passRule',
    'job.passHold',
    'job.firstPass',
    'job.leastPass',
    'job.passCount',
    'job.chipArea',
    'job.springPasses',
    'job.outwards',
    'job.length',
    'job.groove',
    'job.room',
    'job.rpm',
    'machine.crossReads',
    'machine.crossDivision',
    'machine.crossDivisions',
    'machine.topDivision',
    'machine.topDivisions',
    'machine.topScale',
  ],
  uses: ['chosen', 'depth', 'lead'],
  rule: 1,
  compute: (ask): Figure<CutPlan> => {
    const c = ask.figure('chosen');
    const base = c.value?.thread;
    if (!base) return noDiameter('plan', c.value, c.missing);
    const deep = ask.figure('depth');
    const kind = ask.input('job.noseKind');
    const terms: Record<string, Term> = {
      depth: { amount: deep.value === null ? null : approx(deep.value, 'mm'), from: 'depth' },
    };
    const no = (missing: readonly InputPath[], notes: readonly string[] = []): Figure<CutPlan> => ({
      ...withheld('plan', 'passes', missing, terms, notes),
      standing: notes.length > 0 ? 'over' : null,
    });

    const [side, starts] = [ask.input('job.side'), ask.input('job.starts')];
    const [material, tool] = [ask.input('job.material'), ask.input('job.toolMaterial')];
    const thread = { ...base, starts };
    const form = toolForm(thread, side);
    const { half, pitch } = form;
    const assumed: PlanChoice[] = [];
    const chosen = <V>(name: PlanChoice, value: V | null, usual: V): V => {
      if (value === null) assumed.push(name);
      return value ?? usual;
    };

    const asked = chosen(
      'infeed',
      ask.input('job.infeed'),
      infeeds.usualInfeed({ pitch, half, material, nose: kind }),
    );
    // Without a flank there is nothing to go along.
    const infeed = infeeds.hasFlank(half) ? asked : 'radial';
    const [byTop, byCross] = [infeed !== 'radial', infeed === 'radial' || infeed === 'alternate-flank'];
    const reads = ask.input('machine.crossReads');
    const scale = ask.input('machine.topScale');
    const [crossDivision, topDivision] = [
      ask.input('machine.crossDivision'),
      ask.input('machine.topDivision'),
    ];
    const missing: InputPath[] = [
      ...(deep.value === null ? deep.missing : []),
      ...(byCross && !reads ? (['machine.crossReads'] as const) : []),
      ...(byCross && !crossDivision ? (['machine.crossDivision'] as const) : []),
      ...(byTop && !topDivision ? (['machine.topDivision'] as const) : []),
      ...(byTop && !scale ? (['machine.topScale'] as const) : []),
    ];
    if (deep.value === null || !kind) return no(missing, deep.value === null ? deep.why.notes : []);
    if (missing.length > 0) return no(missing);
    const cross: Dial | null =
      crossDivision && reads ? dialOf(crossDivision, ask.input('machine.crossDivisions'), reads) : null;
    const top: Dial | null = topDivision && dialOf(topDivision, ask.input('machine.topDivisions'), 'radius');

    const usual = infeeds.usualAngle(infeed, half);
    const said = byTop && !byCross ? ask.input('job.topSlide') : null;
    if (byTop && !byCross && !said) assumed.push('topSlide');
    const angle = said && scale ? infeeds.onScale(mm(said), scale) : usual;
    if (byTop && !byCross && infeeds.pastFlank(angle, half)) return no([], ['plan-past-flank']);

    const noseSize = ask.input('job.noseSize');
    const total = planDepth({
      thread,
      side,
      classId: ask.input('job.classId'),
      kind,
      noseSize,
      blank: ask.input('job.blank'),
      depth: deep.value,
    });
    if (!total.ok) return no([], [`depth-${total.refusal}`]);
    const depth = total.depth;

    const along = byCross ? null : infeeds.alongFlank(1, angle, half);
    const feeding = byCross ? cross : top;
    if (!feeding) return no(missing);
    const division = along ? feeding.travel * Math.cos(radians(angle)) : feeding.travel;
    const nose = noseFor(kind, noseSize && mm(noseSize), form);
    const point = pointOf(half, nose, Math.max(0, pitch / 2 - form.tip * opening(half)), form.radius);

    const rule = chosen('passRule', ask.input('job.passRule'), 'constant-chip' as const);
    const hold = chosen('passHold', ask.input('job.passHold'), 'count' as const);
    const least = chosen(
      'leastPass',
      ask.input('job.leastPass') && mm(ask.input('job.leastPass') as Stated),
      LEAST_PASS[tool ?? 'hss'],
    );
    const count = usualPasses({ pitch, tool, material, side });
    const usualChip = (): number =>
      Math.max(
        ...chipsOf(
          depthsBy(rule, depth.value, count, point).map((x) => x / division),
          division,
          point,
        ),
      );
    const value = (name: 'firstPass' | 'passCount' | 'chipArea', usualValue: () => number): number => {
      const entered = ask.input(`job.${name}`);
      return chosen(name, entered && mm(entered), entered ? 0 : usualValue());
    };
    const held =
      hold === 'count'
        ? value('passCount', () => count)
        : hold === 'first'
          ? value('firstPass', () => FIRST_PASS[tool ?? 'hss'])
          : value('chipArea', usualChip);
    const answer = planPasses({ rule, hold, held, least, depth: depth.value, division, point });
    if (!answer.ok) {
      if (answer.area !== null) terms.leastChip = { amount: approx(answer.area, 'mm2'), from: 'plan' };
      return no([], [`plan-${answer.refusal}`]);
    }

    const rubs = springRubs(tool, material);
    const entered = ask.input('job.springPasses');
    const springs = rubs ? 0 : chosen('springPasses', entered && mm(entered), usualSprings(tool, material));
    const passes = passesOf({ marks: answer.marks, springs, infeed, point, division, cross, top });
    const reached = passes.at(-1)?.depth ?? 0;
    const travel = infeeds.travelOf(ask.input('job.hand'), ask.input('job.outwards'));
    const moved = along ? infeeds.alongFlank(reached, angle, half) : null;
    const lead = ask.figure('lead').value;
    const rpm = ask.input('job.rpm');

    terms.count = { amount: approx(answer.marks.length, 'none'), from: 'plan' };
    terms.division = {
      amount: approx(division, 'mm'),
      from: byCross ? 'machine.crossDivision' : 'machine.topDivision',
    };
    const blank = ask.input('job.blank');
    if (depth.from === 'measured' && blank && depth.start !== null && depth.target !== null) {
      terms.blank = { amount: exact(blank.value, blank.unit), from: 'job.blank' };
      terms.target = { amount: approx(depth.target, 'mm'), from: 'table' };
      terms.below = {
        amount: approx(depth.value - Math.abs(depth.start - depth.target) / 2, 'mm'),
        from: 'depth',
      };
    }
    if (moved) terms.angle = { amount: approx(angle, 'deg'), from: 'job.topSlide' };
    return {
      value: {
        passes,
        depth,
        reached,
        infeed,
        rule,
        hold,
        held,
        least,
        springs,
        slide: byCross ? 'cross' : 'top',
        division,
        reads: byCross ? reads : null,
        angle: byTop ? angle : null,
        scale: byTop && scale ? infeeds.onScale(angle, scale) : null,
        handle: infeeds.handleTo(side, travel),
        travel,
        creep: moved?.creep ?? 0,
        shaved: moved?.shaved ?? 0,
        point,
        starts,
        byRule: answer.byRule,
        speed: planSpeed({
          material,
          tool,
          rpm,
          diameter: side === 'external' && blank ? blank : thread.major,
        }),
        time: planTime({
          length: ask.input('job.length'),
          groove: ask.input('job.groove'),
          room: ask.input('job.room'),
          lead: lead && leadNumber(lead),
          rpm,
          passes: passes.length,
          starts,
        }),
        assumed,
      },
      standing: deep.standing,
      missing: [],
      why: {
        formula: `plan-${depth.from}`,
        terms,
        result: approx(depth.value, 'mm'),
        source: 'passes',
        notes: [
          `plan-${rule}`,
          'plan-rounded',
          ...(depth.from === 'nominal' ? ['plan-nominal'] : [`plan-aim-${depth.aim}`]),
          ...(moved ? ['plan-along'] : infeed === 'alternate-flank' ? ['plan-alternate'] : []),
          ...(answer.marks.length < answer.byRule ? ['plan-fewer'] : []),
          ...(rubs && entered && entered.value.n > 0n ? ['plan-spring-rubs'] : []),
          ...(asked !== infeed ? ['plan-no-flank'] : []),
          ...deep.why.notes.filter((n) => n === 'depth-root-short' || n === 'depth-square-narrow'),
          'plan-measure',
        ],
      },
    };
  },
});
