/** The inks of drawings, as the theme has them: of every drawing inside a `.drawn` box, and of the strip and the plan. */
import { inkSheet } from '../../views/strip/ink.ts';

export const Inks = () => <style>{inkSheet('.drawn')}</style>;

/** Beside each strip: before there is an answer nothing is drawn. */
export const StripInks = () => <style>{inkSheet('.strip')}</style>;
