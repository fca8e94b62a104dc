/** Everything that one running card is laid out from. */
import { fileOf, type Told } from '../desk/asked.ts';
import { runningCard } from '../desk/card.ts';
import { handed } from '../desk/outing-code.ts';
import type { Voice } from '../words/voice.ts';
import type { CardOnPaper } from './card-paper.ts';
import { cardStrip } from './card-strip.ts';
import { sceneToSvg } from './strip/scene.ts';

export const cardMade = (told: Told, speech: Omit<Voice, 'outing'>, program: string): CardOnPaper => ({
  card: runningCard(told, speech, program),
  strip: sceneToSvg(cardStrip(told, speech)),
  handed: handed(fileOf(told.asked)),
});

/** Trains in one file, at the most. */
export const MOST_CARDS = 40;
