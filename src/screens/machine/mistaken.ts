import { mistakenFor } from '../../core/machine/mistaken';
import { mistakenText } from '../../text/machine';
import type { Workshop } from '../../state/workshops';

/** In words, what a machine could be mistaken for among the others of its workshop. */
export const mistakenNotes = ({ machines }: Workshop, machine: Workshop['machines'][number]): string[] => {
  const others = machines.flatMap((o) => (o === machine ? [] : o.value.profile));
  const { name, colour } = mistakenFor(machine.value.profile, others);
  return [...(name ? [mistakenText.name(name)] : []), ...(colour ? [mistakenText.colour(colour)] : [])];
};
