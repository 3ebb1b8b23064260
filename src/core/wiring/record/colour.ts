/**
 * Conductor colours by the letter codes of IEC 60757: black, brown, red, orange, yellow, green, blue, violet, grey, white,
 * pink, turquoise. Two colours are written with a stroke, body first.
 */
export const COLOURS = ['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GY', 'WH', 'PK', 'TQ'] as const;
export type Colour = (typeof COLOURS)[number];

/** "WH" or "WH/GN". */
export type WireColour = Colour | `${Colour}/${Colour}`;

/** Body, and the second colour or null. */
export const coloursOf = (colour: WireColour): readonly [Colour, Colour | null] => {
  const [body, second] = colour.split('/') as [Colour, Colour | undefined];
  return [body, second ?? null];
};

const isColour = (x: string | undefined): x is Colour => COLOURS.some((c) => c === x);

export const isWireColour = (x: unknown): x is WireColour => {
  if (typeof x !== 'string') return false;
  const [body, second, ...rest] = x.split('/');
  return (
    rest.length === 0 && isColour(body) && (second === undefined || (isColour(second) && second !== body))
  );
};

/** Green and yellow together mark the protective conductor and nothing else (IEC 60445). */
export const isEarthColour = (colour: WireColour | null): boolean => colour === 'GN/YE' || colour === 'YE/GN';
