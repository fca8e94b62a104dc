/** The camera looks for a code until it has one, it is stopped, or one leaves: then it is let go. */
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { codeInFrame } from './code-photo.ts';

/** Between two looks, ms: a phone's processor stays cool. */
const PAUSE = 150;

interface Props {
  /** Says whether that was all: an outing in several codes goes on. */
  readonly took: (code: string) => Promise<boolean>;
  readonly close: () => void;
}

export function Camera({ took, close }: Props) {
  const video = useRef<HTMLVideoElement>(null);
  const said = useSignal('Waiting for the camera …');
  useEffect(() => {
    let stream: MediaStream | undefined;
    let left = false;
    let last = '';
    const look = async (): Promise<void> => {
      while (!left && video.current) {
        const code = await codeInFrame(video.current).catch(() => undefined);
        if (left) return;
        if (code && code !== last) {
          last = code;
          if (await took(code)) return close();
        }
        await new Promise((next) => setTimeout(next, PAUSE));
      }
    };
    const start = async (): Promise<void> => {
      try {
        if (!navigator.mediaDevices) throw new DOMException('', 'NotFoundError');
        const ideal = {
          facingMode: { ideal: 'environment' },
          width: { ideal: 1920 },
          height: { ideal: 1080 },
        };
        stream = await navigator.mediaDevices.getUserMedia({ video: ideal, audio: false });
        if (left || !video.current) return stop();
        video.current.srcObject = stream;
        await video.current.play();
        said.value = 'Hold the code so that it fills most of the picture.';
        await look();
      } catch (fault) {
        said.value = whyNot(fault);
      }
    };
    const stop = (): void => {
      left = true;
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
    void start();
    return stop;
  }, []);
  return (
    <section class="camera" aria-label="Camera">
      <video ref={video} muted playsInline aria-label="What the camera sees" />
      <p role="status">{said.value}</p>
      <button type="button" onClick={close}>
        Stop the camera
      </button>
    </section>
  );
}

function whyNot(fault: unknown): string {
  const name = fault instanceof DOMException ? fault.name : '';
  if (name === 'NotAllowedError')
    return 'The camera was refused: allow it for this page in the browser, or take a photograph instead.';
  if (name === 'NotFoundError' || name === 'OverconstrainedError')
    return 'There is no camera here: take a photograph with another device, or paste the code.';
  return 'The camera cannot be used: another program may have it. Take a photograph instead.';
}
