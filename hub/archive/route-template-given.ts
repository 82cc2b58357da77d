import type { ReminderCode } from '../contract/reminder.ts';
import type {
  RouteCheck,
  RouteHeat,
  RouteTemplateDraft,
  RouteWork,
  TemplateStep,
} from '../contract/route-template.ts';

/** The routes that a new shop begins with. All common practice, no source: the user edits them. */

const COMMON_PRACTICE = 'Common practice, no source: change it to what your steel and your shop need.';

interface Extras {
  readonly title?: string;
  readonly note?: string;
  readonly optional?: boolean;
  readonly reminders?: ReminderCode[];
}

const plain = (extras: Extras) => ({ title: '', note: '', optional: false, reminders: [], ...extras });

function heat(step: RouteHeat, extras: Extras = {}): TemplateStep {
  return { kind: 'heat', step, scheduleId: null, ...plain(extras) };
}
function work(kind: RouteWork, extras: Extras = {}): TemplateStep {
  return { kind: 'work', work: kind, ...plain(extras) };
}
function check(kind: RouteCheck, extras: Extras = {}): TemplateStep {
  return { kind: 'check', check: kind, ...plain(extras) };
}

const ANNEAL = heat('full-anneal', { reminders: ['turn-for-even-heat', 'lay-straight-in-ash'] });
const SHAPE = work('shape', { reminders: ['thin-tip-heat-sink', 'smooth-before-quench'] });

function normalise(title: string, optional: boolean): TemplateStep {
  return heat('normalise', { title, optional, reminders: ['turn-for-even-heat', 'still-air-no-draught'] });
}

const NORMALISE_ONE_TO_THREE = [
  normalise('', false),
  normalise('Normalise a second time', true),
  normalise('Normalise a third time', true),
];

const HARDEN = heat('harden', {
  reminders: ['smooth-before-quench', 'turn-for-even-heat', 'lid-beside-the-oil', 'quench-straight-in'],
});
const FILE = check('file', { reminders: ['clean-before-file'] });
const TEMPER_TWICE = [
  heat('temper', { reminders: ['temper-soon-after-quench'] }),
  heat('temper', { title: 'Temper a second time', reminders: ['cool-between-tempers'] }),
];
const HARDNESS = check('hardness', { reminders: ['clean-before-hardness'] });
const STRAIGHTNESS = check('straightness', { reminders: ['straighten-before-cold'] });
const FINISH = work('finish', { reminders: ['keep-cool-while-grinding'] });

export const GIVEN_ROUTES: readonly RouteTemplateDraft[] = [
  {
    name: 'Plain forged tool',
    note: COMMON_PRACTICE,
    steps: [ANNEAL, SHAPE, ...NORMALISE_ONE_TO_THREE, HARDEN, ...TEMPER_TWICE, HARDNESS, FINISH],
  },
  {
    name: 'Forged blade',
    note: COMMON_PRACTICE,
    steps: [
      heat('forge', { reminders: ['turn-for-even-heat'] }),
      ...NORMALISE_ONE_TO_THREE,
      heat('sub-critical-anneal', { title: 'Anneal below the change', optional: true }),
      work('grind', { reminders: ['thin-tip-heat-sink', 'smooth-before-quench'] }),
      HARDEN,
      FILE,
      STRAIGHTNESS,
      ...TEMPER_TWICE,
      HARDNESS,
      FINISH,
    ],
  },
  {
    name: 'Tool from annealed bar',
    note: `Stock removal: nothing was forged, so nothing needs normalising. ${COMMON_PRACTICE}`,
    steps: [
      SHAPE,
      work('stamp', { optional: true }),
      heat('stress-relief', { optional: true }),
      HARDEN,
      FILE,
      ...TEMPER_TWICE,
      HARDNESS,
      FINISH,
    ],
  },
  {
    name: 'Spring',
    note: COMMON_PRACTICE,
    steps: [
      ANNEAL,
      SHAPE,
      normalise('', false),
      HARDEN,
      heat('temper', { reminders: ['temper-soon-after-quench'] }),
      HARDNESS,
      check('other', { title: 'Bend it and see that it comes back' }),
      FINISH,
    ],
  },
  {
    name: 'Soften for cutting and drilling',
    note: COMMON_PRACTICE,
    steps: [
      ANNEAL,
      check('file', { title: 'File bites everywhere', reminders: ['clean-before-file'] }),
      work('shape'),
    ],
  },
];
