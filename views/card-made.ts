/** Everything that one running card is laid out from. */
import { fileOf, type Told } from '../desk/asked.ts';
import { runningCard } from '../desk/card.ts';
import { handed } from '../desk/outing-code.ts';
import type { Voice } from '../words/voice.ts';
import type { CardOnPaper } from './card-paper.ts';
import { cardPlan, cardStrip } from './card-strip.ts';
import { type Scene, sceneToSvg } from './strip/scene.ts';

export const cardMade = (
  told: Told,
  speech: Omit<Voice, 'outing'>,
  program: string,
  records = '',
): CardOnPaper => ({
  card: runningCard(told, speech, program, records),
  ...cardDrawings(cardStrip(told, speech), cardPlan(told, speech)),
  handed: handed(fileOf(told.asked)),
});

/** As they go on paper. */
export const cardDrawings = (strip: Scene, plan: Scene | undefined): Pick<CardOnPaper, 'strip' | 'plan'> => ({
  strip: sceneToSvg(strip),
  ...(plan ? { plan: sceneToSvg(plan) } : {}),
});

/** Trains in one file, at the most. */
export const MOST_CARDS = 40;
