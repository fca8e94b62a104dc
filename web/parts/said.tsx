/** Findings as sentences, with as much of what stands behind each as the room shows. */
import type { Finding } from '../../engine/questions/finding.ts';
import { tellFinding } from '../../words/finding.ts';
import type { Voice } from '../../words/voice.ts';
import { Measure } from './measure.tsx';

interface Props {
  readonly findings: readonly Finding[];
  readonly voice: Voice;
  readonly behind?: readonly ('source' | 'measure')[];
}

export function Said({ findings, voice, behind = ['source', 'measure'] }: Props) {
  return (
    <ol class="findings">
      {findings.map((finding) => {
        const told = tellFinding(finding, voice);
        return (
          <li key={`${told.code} ${told.where}`} data-severity={finding.severity}>
            <strong>{told.what}</strong> {told.why}
            {behind.includes('source') && (
              <>
                {' '}
                <small>Source: {told.source}.</small>
              </>
            )}
            {behind.includes('measure') && told.measure && (
              <small>
                {' '}
                Measure: <Measure path={told.measure} />
              </small>
            )}
          </li>
        );
      })}
    </ol>
  );
}
