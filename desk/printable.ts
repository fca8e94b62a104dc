/** The card in letters that its face has: what cannot be printed is said in words, never as boxes. */
import type { Card, Seat } from './card.ts';
import type { Letters } from './font-letters.ts';

const LACKING = '(letters that this paper cannot print: see the screen)';

const prints = (has: Letters, letter: string): boolean => has(letter.codePointAt(0) ?? 0);

/** Letters that show nothing by themselves, as joiners and marks of direction, are left out. */
const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]+/gu, ' ').normalize('NFC');

/** Each run of letters that the face lacks as words. */
export function printable(text: string, has: Letters, lacking = LACKING): string {
  let out = '';
  let inRun = false;
  for (const letter of plain(text)) {
    if (!prints(has, letter)) inRun = true;
    // A space between two such words belongs to the run.
    else if (!(inRun && letter === ' ')) {
      out = inRun ? `${out.trimEnd()} ${lacking} ${letter}` : out + letter;
      inRun = false;
    }
  }
  return (inRun ? `${out.trimEnd()} ${lacking}` : out).trim();
}

/** A name of which nothing prints is said by its seat. */
function seated({ seat, name }: Seat, has: Letters): Seat {
  const some = [...plain(name)].some((letter) => letter !== ' ' && prints(has, letter));
  return {
    seat: printable(seat, has),
    name:
      some || name === ''
        ? printable(name, has)
        : `seat ${printable(seat, has)}: name in ${LACKING.slice(1, -1)}`,
  };
}

export function printableCard(card: Card, has: Letters): Card {
  const say = (text: string): string => printable(text, has);
  return {
    ...card,
    title: say(card.title),
    sentence: say(card.sentence),
    train: say(card.train),
    line: say(card.line),
    tried: card.tried.map(say),
    invented: say(card.invented),
    records: say(card.records),
    heeds: card.heeds.map((h) => ({ ...h, text: say(h.text) })),
    speeds: card.speeds.map((s) => ({ ...s, why: say(s.why) })),
    braking: card.braking.map(say),
    seating: card.seating.map(({ vehicle, seats }) => ({
      vehicle: say(vehicle),
      seats: seats.map((s) => seated(s, has)),
    })),
    assumptions: say(card.assumptions),
  };
}

/** The words of a drawing likewise, in a drawing's room. */
export const printableSvg = (svg: string, has: Letters): string =>
  svg.replace(/>([^<]+)</g, (_, text: string) =>
    text.trim() === '' ? `>${text}<` : `>${printable(text, has, '(name: see the screen)')}<`,
  );
