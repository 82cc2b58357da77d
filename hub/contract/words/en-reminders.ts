import type { ReminderCode } from '../reminder.ts';

/** What the trade reminds itself of: common practice, no source. */
export const reminderWords: Readonly<Record<ReminderCode, string>> = {
  'thin-tip-heat-sink': 'Leave extra steel at a thin tip: it is a heat sink, and is ground off afterwards.',
  'turn-for-even-heat': 'Turn the piece so that the heat is even all round.',
  'lay-straight-in-ash': 'Lay it straight in the ash, or it bends as it cools.',
  'still-air-no-draught': 'Cool it in still air, off cold steel and out of draughts.',
  'smooth-before-quench': 'Take out deep scratches and sharp inside corners first: cracks start there.',
  'lid-beside-the-oil':
    'Lid and extinguisher stand beside the oil; warm the oil, and never with water in it.',
  'quench-straight-in': 'Straight in and up and down, not sideways: sideways bends it.',
  'temper-soon-after-quench': 'Temper as soon as it is hand-warm: a quenched piece may crack while it waits.',
  'cool-between-tempers': 'Let it cool to the hand before the next temper.',
  'clean-before-hardness': 'Grind the soft skin off where you measure: it reads low.',
  'clean-before-file': 'Clean the scale off first: a file skates on scale, whatever is under it.',
  'straighten-before-cold': 'Straighten while it is still warm, never fully hard and cold.',
  'keep-cool-while-grinding': 'Keep it cool while grinding: a blue edge has been tempered again.',
};
