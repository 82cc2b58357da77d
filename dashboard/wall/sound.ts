import { type ReadonlySignal, signal } from '@preact/signals';
import { type Pulse, SOUND_PATTERNS, type SoundKind, type SoundPattern } from './sound-pattern.ts';

/**
 * The wall's voice, through Web Audio. A browser lets nothing sound before the first touch; until then the
 * screen says so. Nothing here can know whether a loudspeaker is on: the software can only ask for sound.
 */
export interface Voice {
  /** True while the browser does not let anything sound. */
  readonly blocked: ReadonlySignal<boolean>;
  /** Sounds this pattern over and over, or falls silent. */
  play(kind: SoundKind | null): void;
  /** Sounds a pattern once, for trying out the loudspeaker. */
  tryOut(kind: SoundKind): void;
  stop(): void;
}

const LOUDNESS = 0.5;
const CHECK_MS = 1_000;

/** A voice that wakes at the first touch or key. */
export function createVoice(): Voice {
  const context = new AudioContext();
  const blocked = signal(context.state !== 'running');
  let playing: SoundKind | null = null;
  let out: GainNode | null = null;
  let timer: number | undefined;

  const check = () => {
    blocked.value = context.state !== 'running';
  };
  const wake = () => {
    if (context.state !== 'running') void context.resume().then(check, check);
  };
  const hush = () => {
    window.clearTimeout(timer);
    out?.disconnect();
    out = null;
  };
  const round = (kind: SoundKind) => {
    hush();
    const pattern = SOUND_PATTERNS[kind];
    // Notes asked for while the context sleeps would all sound at once when it wakes.
    if (context.state === 'running') out = sound(context, pattern);
    timer = window.setTimeout(() => round(kind), pattern.everySeconds * 1000);
  };

  document.addEventListener('pointerdown', wake, true);
  document.addEventListener('keydown', wake, true);
  context.addEventListener('statechange', () => {
    check();
    if (playing !== null && context.state === 'running') round(playing);
  });
  const checking = window.setInterval(check, CHECK_MS);
  return {
    blocked,
    play: (kind) => {
      if (kind === playing) return;
      playing = kind;
      if (kind === null) hush();
      else round(kind);
    },
    tryOut: (kind) => {
      wake();
      sound(context, SOUND_PATTERNS[kind]);
    },
    stop: () => {
      hush();
      window.clearInterval(checking);
      document.removeEventListener('pointerdown', wake, true);
      document.removeEventListener('keydown', wake, true);
      void context.close();
    },
  };
}

function sound(context: AudioContext, pattern: SoundPattern): GainNode {
  const out = context.createGain();
  out.gain.value = LOUDNESS / pattern.harmonics.reduce((sum, { share }) => sum + share, 0);
  out.connect(context.destination);
  for (const pulse of pattern.pulses) {
    for (const { multiple, share } of pattern.harmonics) tone(context, out, pattern, pulse, multiple, share);
  }
  return out;
}

function tone(
  context: AudioContext,
  out: GainNode,
  { riseSeconds }: SoundPattern,
  pulse: Pulse,
  multiple: number,
  share: number,
): void {
  const start = context.currentTime + 0.02 + pulse.atSeconds;
  const end = start + pulse.seconds;
  const envelope = context.createGain();
  envelope.gain.setValueAtTime(0, start);
  envelope.gain.linearRampToValueAtTime(share, start + riseSeconds);
  envelope.gain.setValueAtTime(share, end - riseSeconds);
  envelope.gain.linearRampToValueAtTime(0, end);
  envelope.connect(out);
  const oscillator = context.createOscillator();
  oscillator.frequency.value = pulse.hertz * multiple;
  oscillator.connect(envelope);
  oscillator.start(start);
  oscillator.stop(end);
}
