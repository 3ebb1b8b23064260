import { TEETH, readWheels, writeWheels } from '../../../core/drive/trains/written';
import { number } from '../../../core/machine';
import { refusalText } from '../../../text/typed';
import { wheelsText } from '../../../text/wheels';
import type { App } from '../../../state';
import { plainUnit, type Question } from './question';

/** One more change wheel for the machine's set. */
export const wheelQuestion = (app: App): Question => ({
  label: wheelsText.addLabel,
  field: number('gears', ['teeth'], `${TEETH.least}`, `${TEETH.most}`, { whole: true }),
  now: null,
  unitLabel: plainUnit,
  accept: async (value) => {
    const set = readWheels(`${app.profile?.gearWheels ?? ''} ${value.value.n}`);
    if (!set.ok) return refusalText({ code: set.error });
    await app.setField('gearWheels', writeWheels(set.value));
    return null;
  },
});
