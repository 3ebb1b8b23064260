/** A name that no other device will make: 128 random bits. Works without a secure context too. */
export const newId = (): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('');
};
