import { capital, type Words } from '../words';

/** Said before the first check and kept in reach of all of them. */
export const cautions = (w: Words): readonly string[] => [
  'A turning chuck takes hold of sleeves, hair and gloves at once. Stop the spindle before you measure, clean or reach in.',
  `${capital(w.mains)} voltage kills. Work on it, and on any stop circuit, is for people trained and allowed to do it.`,
  'An emergency stop takes the power away by its own wires. A key in this app, or an input of a controller, is no emergency stop.',
  'Local rules and the people trained for your shop decide. These checks take the place of neither.',
  'The app sees nothing of the lathe. It keeps what you say you saw.',
];
