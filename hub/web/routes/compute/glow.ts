import { GlowAnswer, GlowQuestion } from '../../../contract/compute/glow.ts';
import { glowAt, glowScale } from '../../../physics/heat/glow.ts';
import { computation } from './computation.ts';

export const glow = computation({
  name: 'glow',
  summary: 'The colour that steel has at a heat, as smiths read it',
  question: GlowQuestion,
  answer: GlowAnswer,
  run: ({ celsius }) => ({
    glow: celsius === undefined ? null : glowAt(celsius),
    scale: glowScale(),
    source: 'Chapman, Workshop Technology part 1 (5th ed. 1972), as an encyclopaedia prints it',
  }),
});
