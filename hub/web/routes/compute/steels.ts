import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import {
  SteelDetail,
  SteelSummary,
  SteelWindowsAnswer,
  SteelWindowsQuestion,
  type StepWindow as StepWindowShown,
  type TemperSet as TemperSetShown,
} from '../../../contract/compute/steels.ts';
import { showValue } from '../../../contract/significant.ts';
import { findGrade, GRADES } from '../../../physics/steel/catalogue.ts';
import type { ElementRanges } from '../../../physics/steel/composition.ts';
import { windowsOf } from '../../../physics/steel/derived-windows.ts';
import type { Grade, StepWindow } from '../../../physics/steel/grade.ts';
import { outsideLimits, steelOfGrade } from '../../../physics/steel/own-steel.ts';
import { pairsOf, type TemperSet } from '../../../physics/steel/temper-set.ts';
import { declareRoute, json } from '../../route.ts';
import { need } from '../need.ts';
import { needGrade, steelAsked, steelOf } from './asked.ts';
import { computation, type Frozen } from './computation.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/steels',
  tags: ['compute'],
  summary: 'The catalogue of grades: limits, windows of every step, source and standing of each number',
  responses: { 200: json(z.array(SteelSummary), 'Grades, in the order a picker shows them') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/steels/{name}',
  tags: ['compute'],
  summary: 'One grade, by any of its names, with its measured tempering curves',
  request: { params: z.object({ name: z.string().min(1).max(64) }) },
  responses: { 200: json(SteelDetail, 'The grade') },
});

export function steelRoutes(app: OpenAPIHono): void {
  app.openapi(list, (c) => c.json(GRADES.map(summaryOf), 200) as never);
  app.openapi(read, (c) => {
    const { name } = c.req.valid('param');
    const grade = need(findGrade(name), 'steel', name);
    return c.json({ ...summaryOf(grade), temperSets: grade.temperSets.map(setOf) }, 200) as never;
  });
}

function summaryOf(grade: Grade): Frozen<z.infer<typeof SteelSummary>> {
  return {
    id: grade.id,
    title: steelOfGrade(grade).title,
    names: grade.names,
    nominal: { ...grade.nominal },
    limits: limitsOf(grade.limits),
    limitsFrom: grade.limitsFrom,
    windows: windowsOf(grade).map(windowShown),
    notRecommended: grade.notRecommended,
    quench: grade.quench,
    quenched: grade.quenched,
    annealedBrinell: grade.annealedBrinell ?? null,
  };
}

function windowShown(window: StepWindow): Frozen<z.infer<typeof StepWindowShown>> {
  const { lowCelsius, highCelsius, uncertaintyCelsius: by } = window;
  const high = showValue(highCelsius, by, '°C');
  return {
    ...window,
    shown: lowCelsius < highCelsius ? `${showValue(lowCelsius, by, '')} to ${high}` : high,
  };
}

function limitsOf(ranges: ElementRanges): Record<string, { low: number; high: number }> {
  return Object.fromEntries(Object.entries(ranges).map(([element, [low, high]]) => [element, { low, high }]));
}

function setOf(set: TemperSet): Frozen<z.infer<typeof TemperSetShown>> {
  const { runs: _, ...rest } = set;
  return { ...rest, composition: { ...set.composition }, pairs: pairsOf(set) };
}

export const steelWindows = computation({
  name: 'steel-windows',
  summary: 'Windows of every step for a grade, a composition or a certificate, and whether it fits its grade',
  question: SteelWindowsQuestion,
  answer: SteelWindowsAnswer,
  run: (question) => {
    const steel = steelOf(question);
    const certified = question.steel !== undefined && question.composition !== undefined;
    return {
      steel: steelAsked(steel),
      windows: steel.windows.map(windowShown),
      outsideLimits: certified ? outsideLimits(needGrade(question.steel ?? ''), steel.composition) : [],
      flags: steel.flags,
    };
  },
});
