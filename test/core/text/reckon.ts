/**
 * Reckons a line such as "(1.5 mm ÷ 3 mm) × (6000 steps/rev ÷ 4800 counts/rev)" with nothing of the project's own,
 * as a person with a pocket calculator would: units are passed over.
 */
export const reckon = (line: string): number => {
  const text = line
    .replace(/[\u00a0\u202f ]/g, '')
    .replace(/(steps|counts|edges|pulses|mm|edges)\/(rev|s|count)/g, '')
    .replace(/[a-zµ°]+/g, '')
    .replace(/−/g, '-');
  let at = 0;
  const eat = (sign: string): boolean => text[at] === sign && ++at > 0;
  const atom = (): number => {
    if (eat('(')) {
      const value = sum();
      if (!eat(')')) throw new Error(`no ) in ${line}`);
      return value;
    }
    if (eat('π')) return Math.PI;
    const digits = /^\d+(?:\.\d+)?/.exec(text.slice(at))?.[0];
    if (!digits) throw new Error(`nothing to reckon at "${text.slice(at)}" of "${line}"`);
    at += digits.length;
    return Number(digits);
  };
  const product = (): number => {
    let value = atom();
    for (;;) {
      if (eat('×')) value *= atom();
      else if (eat('÷') || eat('/')) value /= atom();
      else return value;
    }
  };
  const sum = (): number => {
    let value = product();
    for (;;) {
      if (eat('+')) value += product();
      else if (eat('-')) value -= product();
      else return value;
    }
  };
  const value = sum();
  if (at !== text.length) throw new Error(`left over "${text.slice(at)}" of "${line}"`);
  return value;
};
