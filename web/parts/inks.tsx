/** The inks of every drawing inside a `.drawn` box, as the theme has them. */
import { inkSheet } from '../../views/strip/ink.ts';

export const Inks = () => <style>{inkSheet('.drawn')}</style>;
