import type { AirView } from '../../hub/contract/air.ts';
import { type Column, Table } from '../parts/table.tsx';
import { airWords, FORCE_WORDS, LIMIT_WORDS } from '../words/air.ts';
import { number } from '../words/format.ts';
import { STANDING_WORDS } from '../words/steel.ts';

type Row = AirView['limits'][number];

interface LimitTableProps {
  readonly caption: string;
  readonly limits: readonly Row[];
}

/** Limits with who set them, in which edition, and how that is known. */
export function LimitTable({ caption, limits }: LimitTableProps) {
  return (
    <Table
      caption={caption}
      columns={COLUMNS}
      rows={limits}
      rowKey={({ kind }) => kind}
      empty={airWords.none}
    />
  );
}

const COLUMNS: readonly Column<Row>[] = [
  {
    key: 'kind',
    head: airWords.limitHead,
    cell: ({ kind }) => `${LIMIT_WORDS[kind].name}: ${LIMIT_WORDS[kind].long}`,
  },
  { key: 'ppm', head: airWords.ppmHead, cell: ({ limit }) => number(limit.ppm), align: 'right' },
  {
    key: 'body',
    head: airWords.bodyHead,
    cell: ({ limit }) => `${limit.body} (${FORCE_WORDS[limit.force]})`,
  },
  { key: 'edition', head: airWords.editionHead, cell: ({ limit }) => limit.edition },
  {
    key: 'from',
    head: airWords.fromHead,
    cell: ({ limit }) => `${limit.from.source}. ${STANDING_WORDS[limit.from.standing]}.`,
  },
];
