import { leadNumber, type Lead } from '../core/quantity';
import { inBase, toNumber } from '../core/quantity';
import { catalogue, threadById, type Thread } from '../core/thread';
import { showLead, statedText } from '../text/numbers';
import { familyText } from '../text/threads';

/** What an element tells the page of a thread. The numbers are for the page's own use; exact is what `pitch` says. */
export interface EmbedThread {
  /** Stable for ever, e.g. "iso-coarse:M10". */
  readonly id: string;
  /** As the standard writes it: "M10×1.5", "1/2-13 UNC". */
  readonly designation: string;
  /** Its family's id: "iso-coarse". */
  readonly family: string;
  /** Its family's name: "ISO metric coarse". */
  readonly familyName: string;
  /** The pitch as the standard states it: "1.5 mm", "13 tpi". */
  readonly pitch: string;
  readonly pitchMm: number;
  /** Threads per inch. */
  readonly tpi: number;
  readonly starts: number;
  /** Travel for each turn. */
  readonly leadMm: number;
  /** Nominal major diameter; null where the thread has none of its own. */
  readonly majorMm: number | null;
}

/** The pitch as a length of which π is kept apart. */
export const pitchOf = ({ pitch }: Thread): Lead => ({
  mm: inBase(pitch),
  pi: pitch.unit === 'module' || pitch.unit === 'dp',
});

export const describe = (t: Thread): EmbedThread => {
  const pitchMm = leadNumber(pitchOf(t));
  return {
    id: t.id,
    designation: t.designation,
    family: t.family,
    familyName: familyText(t.family),
    pitch: statedText(t.pitch),
    pitchMm,
    tpi: 25.4 / pitchMm,
    starts: t.starts,
    leadMm: pitchMm * t.starts,
    majorMm: t.major && toNumber(inBase(t.major)),
  };
};

/** A pitch both ways: "1.5 mm · 16.93 tpi". */
export const pitchBoth = (t: Thread): string => {
  const { mm, tpi } = showLead(pitchOf(t));
  return `${mm} mm · ${tpi} tpi`;
};

/** A thread by its id or by its designation, with "x" for "×"; undefined where there is none such. */
export const threadCalled = (text: string): Thread | undefined => {
  const name = text.trim().replace(/(\d)\s*[xX]\s*(?=\d)/g, '$1×');
  return threadById(text.trim()) ?? (name ? catalogue().find((t) => t.designation === name) : undefined);
};
