/** What is tried on the outing, beside its word. */
import type { Asked } from '../../desk/asked.ts';
import { tellTrials } from '../../desk/tell-trials.ts';
import { speech } from '../state/session.ts';

export const Tried = ({ asked }: { readonly asked: Asked }) => (
  <span class="tried"> tried: {tellTrials(asked, speech.value).join('; ')}</span>
);
