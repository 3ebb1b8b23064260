import type { CUTTING } from '../../core/checks';
import { capital, type Words } from '../words';
import type { TextsOf } from './item-text';

export const cuttingTexts = (w: Words): TextsOf<typeof CUTTING> => ({
  'gauging-clean': {
    question: 'Clean, deburred and cool?',
    first: 'Spindle stopped, tool well away.',
    look: 'Brush the thread out, take the burr off, let it cool. Then measure.',
    why: 'A burr, a chip or warm metal gives a size that isn’t there.',
  },
  'scratch-pitch': {
    question: 'Scratch shows the right pitch?',
    first: 'Spindle stopped before you measure.',
    look: 'Hold a pitch gauge or a rule to the scratch, over as many turns as it has. One line, not two. The hand is right.',
    why: 'It is the cheapest proof of the whole chain. It proves the right thread, not the last micrometre.',
  },
  'nothing-changed': {
    question: 'Nothing changed since?',
    look: 'Same speed, same ratio, power never off. Work not moved in the chuck, tool not moved in its post.',
    why: 'Each of these shifts the groove. Then the thread has to be picked up anew.',
  },
  isolated: {
    question: 'Isolated and locked off?',
    first: `Switch off, lock the ${w.mains} isolator, keep the key on you.`,
    look: 'Wait as long as the maker says for capacitors to discharge. Try to start: nothing happens. The emergency stop is not an isolator.',
    why: `A drive under your hands that starts by itself, or a wire still live. ${capital(w.mains)} work is for a competent person.`,
  },
});
