/** That what is on the screen is an example, or has parts of one. */
import { tellInvented } from '../../desk/invented.ts';
import { paper } from '../state/session.ts';

export function Invented() {
  const invented = tellInvented(paper.value);
  return invented === '' ? null : <strong class="invented">{invented}</strong>;
}
