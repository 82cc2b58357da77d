import type { OpenAPIHono } from '@hono/zod-openapi';
import {
  PlanCheck,
  PlanCheckRequest,
  type PlanFault,
  Proposal,
  ProposalRequest,
} from '../../contract/planning.ts';
import { type DisplayUnit, ScheduleDraft, type Segment } from '../../contract/schedule.ts';
import type { PlanReason } from '../../contract/schedule-basis.ts';
import {
  dataSheetWords,
  planFaultWords,
  planReasonWords,
  planScopeWords,
  planUncertaintyWords,
  stepName,
} from '../../contract/words/en-planning.ts';
import { secondsToClosing, wallClock } from '../../gas/closing.ts';
import { checkPlan, type GasLeft } from '../../planning/check.ts';
import { type ProposedPlan, proposePlan } from '../../planning/propose.ts';
import type { Fault, PlanFurnace, PlanPiece, Reason } from '../../planning/types.ts';
import { hoursLeft } from '../gas-view.ts';
import type { WebParts } from '../parts.ts';
import { describedPiece, planFurnace, planPieces } from '../planning-parts.ts';
import { declareRoute, json, jsonBody } from '../route.ts';
import { gasKnown } from './gas.ts';
import { need } from './need.ts';

const propose = declareRoute('look', {
  method: 'post',
  path: '/api/v1/schedules/propose',
  summary:
    'A schedule out of steel, step, section and furnace, with a reason for every number; nothing is kept',
  request: { body: jsonBody(ProposalRequest) },
  responses: { 200: json(Proposal, 'The proposal') },
});
const check = declareRoute('look', {
  method: 'post',
  path: '/api/v1/schedules/check',
  summary: 'What speaks against a schedule for these pieces in this furnace, before it starts',
  request: { body: jsonBody(PlanCheckRequest) },
  responses: { 200: json(PlanCheck, 'What was found, what was looked at, and what could not be') },
});

export function planningRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock } = parts;
  app.openapi(propose, (c) => {
    const question = c.req.valid('json');
    const furnace = planFurnace(archive, question.furnaceId);
    const asked = question.pieceIds.map((pieceId) => ({ pieceId, routeStepId: null }));
    const pieces =
      asked.length > 0 ? planPieces(archive, asked, question.step) : [describedPiece(archive, question)];
    const clockOn = asked.length > 0 ? 'core' : 'air';
    const wantedHrc = question.wantedHrc ?? null;
    const plan = proposePlan({
      step: question.step,
      pieces,
      furnace,
      wantedHrc,
      coolIn: question.coolIn ?? null,
      clock: clockOn,
    });
    const unit = archive.shop().settings.displayUnit;
    const faults = checkPlan({
      segments: plan.segments,
      furnace,
      pieces,
      clock: clockOn,
      wantedHrc,
      secondsToClosing: null,
    });
    const draft = draftOf(plan, { pieces, furnace, step: question.step, unit, at: clock.now() });
    return c.json(
      {
        draft,
        faults: faults.map((fault) => toldFault(fault, unit)),
        expectedSeconds: plan.expectedSeconds === null ? null : Math.round(plan.expectedSeconds),
      },
      200,
    );
  });
  app.openapi(check, (c) => {
    const question = c.req.valid('json');
    const furnace = planFurnace(archive, question.furnaceId);
    const segments =
      question.segments ??
      need(archive.schedule(question.scheduleId ?? ''), 'schedule', question.scheduleId ?? '').segments;
    const pieces = planPieces(archive, question.pieces, null);
    const gas = gasLeftFor(parts, question.furnaceId);
    const faults = checkPlan({
      segments,
      furnace,
      pieces,
      clock: pieces.length > 0 ? 'core' : 'air',
      wantedHrc: question.wantedHrc ?? null,
      ...(gas === undefined ? {} : { gas }),
      secondsToClosing: closingIn(parts),
    });
    const unit = archive.shop().settings.displayUnit;
    return c.json(
      {
        faults: faults.map((fault) => toldFault(fault, unit)),
        ...planScopeWords({
          pieces: pieces.length,
          withoutStep: pieces.flatMap(({ step, mark }) => (step === null && mark !== null ? [mark] : [])),
          gasKnown: gas !== undefined && gas !== null,
          hardnessAsked: question.wantedHrc !== undefined,
        }),
      },
      200,
    );
  });
}

/** Seconds until the shop closes; null: it has no closing time, or it is after it. */
function closingIn({ archive, clock }: WebParts): number | null {
  const { closingTime, timeZone } = archive.shop().settings;
  return secondsToClosing(closingTime, wallClock(timeZone), clock.now());
}

/** Undefined: this furnace burns no gas, or nobody has set it up; null: nobody knows what is left. */
function gasLeftFor(parts: WebParts, furnaceId: string): GasLeft | null | undefined {
  // Nobody has entered its burners: then this is no question of gas that the hub could answer.
  if ((parts.archive.furnace(furnaceId)?.gas ?? null) === null) return undefined;
  return hoursLeft(gasKnown(parts, parts.clock.now()), furnaceId);
}

interface DraftParts {
  readonly pieces: readonly PlanPiece[];
  readonly furnace: PlanFurnace;
  readonly step: string;
  readonly unit: DisplayUnit;
  readonly at: number;
}

function draftOf(plan: ProposedPlan, { pieces, furnace, step, unit, at }: DraftParts): ScheduleDraft {
  const thickest = pieces.reduce((a, b) => (b.thicknessMm > a.thicknessMm ? b : a));
  const { id, title, composition } = thickest.steel;
  const named = stepName(step);
  return ScheduleDraft.parse({
    name: `${title}: ${named}, ${Math.round(thickest.thicknessMm * 10) / 10} mm`.slice(0, 80),
    note: '',
    displayUnit: unit,
    segments: [...plan.segments],
    basis: {
      madeAt: at,
      step,
      steel: { id: id === '' ? null : id, title, composition },
      section: { shape: thickest.shape, thicknessMm: thickest.thicknessMm },
      furnace: furnace.name,
      reasons: plan.reasons.map((reason) => toldReason(reason, plan.segments, unit)),
      uncertainty: planUncertaintyWords(
        {
          uncertaintyCelsius: plan.target.uncertaintyCelsius,
          fitted: furnace.exposureFrom.standing === 'derived-here',
        },
        unit,
      ),
      askTheDataSheet: dataSheetWords(step, title),
    },
  });
}

function toldReason(reason: Reason, segments: readonly Segment[], unit: DisplayUnit): PlanReason {
  const { path, code, params, from } = reason;
  const text = planReasonWords(code, params, unit);
  return { path, code, params: { ...params }, from: { ...from }, text, value: valueAt(segments, path) };
}

/** The proposed number at a pointer such as /segments/1/targetCelsius. */
function valueAt(segments: readonly Segment[], path: string): number | string | null {
  const [, , index = '', field = ''] = path.split('/');
  const segment = segments[Number(index)];
  const value: unknown =
    segment === undefined ? null : Object.entries(segment).find(([key]) => key === field)?.[1];
  return typeof value === 'number' || typeof value === 'string' ? value : null;
}

function toldFault({ code, weight, segment, piece, params }: Fault, unit: DisplayUnit): PlanFault {
  const text = planFaultWords(code, params, unit);
  return {
    code,
    weight,
    segment,
    pieceId: piece?.id ?? null,
    mark: piece?.mark ?? null,
    params: { ...params },
    text,
  };
}
