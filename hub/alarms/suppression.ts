import type { Finding } from '../contract/alarm.ts';
import { isAlike } from '../contract/alarm-relations.ts';
import { ALARM_DEFINITIONS } from './definitions.ts';

/** A finding that a rule of the definitions holds back. */
export interface HeldBack {
  readonly finding: Finding;
  readonly rule: string;
}

/** What holds, told apart into what is announced and what is suppressed by design. */
export interface Sifted {
  readonly told: readonly Finding[];
  readonly heldBack: readonly HeldBack[];
}

/**
 * One trouble, one alarm, across judges that do not know of each other. Nothing about danger to life is ever held
 * back. A rule names only louder kinds, so that whatever is held back, something that is announced tells it.
 */
export function sift(findings: readonly Finding[]): Sifted {
  const told: Finding[] = [];
  const heldBack: HeldBack[] = [];
  for (const finding of findings) {
    const rule = ruleFor(finding, findings);
    if (rule === null) told.push(finding);
    else heldBack.push({ finding, rule });
  }
  return { told, heldBack };
}

function ruleFor(finding: Finding, findings: readonly Finding[]): string | null {
  const { suppressedBy, dangerToLife } = ALARM_DEFINITIONS[finding.kind];
  if (dangerToLife) return null;
  const found = suppressedBy.find(({ by, same }) =>
    findings.some((other) => other.kind === by && isAlike(finding, other, same)),
  );
  return found?.rule ?? null;
}
