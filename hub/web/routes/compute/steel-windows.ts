import { SteelWindowsAnswer, SteelWindowsQuestion } from '../../../contract/compute/steels.ts';
import { outsideLimits } from '../../../physics/steel/own-steel.ts';
import { steelAsked } from './asked.ts';
import { computation } from './computation.ts';
import { windowShown } from './steel-shown.ts';

export const steelWindows = computation({
  name: 'steel-windows',
  summary: 'Windows of every step for a grade, a composition or a certificate, and whether it fits its grade',
  question: SteelWindowsQuestion,
  answer: SteelWindowsAnswer,
  run: (question, { steels }) => {
    const steel = steels.steelOf(question);
    const grade = steels.certifiedOf(question)?.grade ?? null;
    return {
      steel: steelAsked(steel),
      windows: steel.windows.map(windowShown),
      outsideLimits: grade === null ? [] : outsideLimits(grade, steel.composition),
      flags: steel.flags,
    };
  },
});
