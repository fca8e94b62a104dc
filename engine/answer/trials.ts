/** Trying changes on an outing that was asked about: each once, and of it only what the change touches. */
import { applyChange, type Change } from '../outing/change.ts';
import { inquire, type OpenInquiry } from './inquiry.ts';

/** What a change leads to, asked as far as somebody needs. @param onTried how many were tried so far */
export function trialsOn(
  inquiry: OpenInquiry,
  onTried: (changes: number) => void = () => {},
): (change: Change) => OpenInquiry {
  const tried = new Map<string, OpenInquiry>();
  return (change) => {
    const key = JSON.stringify(change);
    const known = tried.get(key);
    if (known) return known;
    onTried(tried.size + 1);
    const after = inquire(applyChange(inquiry.context.written, change), inquiry.care, inquiry);
    tried.set(key, after);
    return after;
  };
}
