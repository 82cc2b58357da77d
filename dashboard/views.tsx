import type { VNode } from 'preact';
import { AirPage } from './air/air.tsx';
import { AlarmsPage } from './alarms/alarms.tsx';
import { AlarmDefinitionsPage } from './alarms/definitions.tsx';
import { AlarmJournalPage } from './alarms/journal.tsx';
import { AlarmReviewPage } from './alarms/review.tsx';
import { FiringPage } from './firings/firing.tsx';
import { Firings } from './firings/firings.tsx';
import { GasPage } from './gas/gas.tsx';
import { HeatPage } from './heat/heat.tsx';
import { NotFound } from './not-found.tsx';
import { BenchPage } from './pieces/bench.tsx';
import { LabelPage } from './pieces/label.tsx';
import { PieceByMark, PiecePage } from './pieces/piece.tsx';
import { Pieces } from './pieces/pieces.tsx';
import { RoutePage } from './pieces/route.tsx';
import { Routes } from './pieces/routes.tsx';
import { BatchesPage } from './review/batches.tsx';
import { ComparePage } from './review/compare.tsx';
import type { Route } from './router.ts';
import { SchedulePage } from './schedules/schedule.tsx';
import { Schedules } from './schedules/schedules.tsx';
import { Setup } from './setup/setup.tsx';
import { SteelPage } from './steel/steel.tsx';
import { Wall } from './wall/wall.tsx';

/** Which view shows a route. A new view is a folder and a row here. */
export function viewOf(route: Route): VNode {
  switch (route.view) {
    case 'wall':
      return <Wall />;
    case 'firings':
      return <Firings />;
    case 'firing':
      return <FiringPage key={route.id} id={route.id} />;
    case 'compare':
      return (
        <ComparePage
          key={route.schedule}
          schedule={route.schedule}
          ids={route.ids.split(',').filter(Boolean)}
        />
      );
    case 'batches':
      return <BatchesPage key={route.schedule} schedule={route.schedule} />;
    case 'schedules':
      return <Schedules />;
    case 'schedule':
      return <SchedulePage key={route.id} id={route.id} />;
    case 'bench':
      return <BenchPage />;
    case 'pieces':
      return <Pieces />;
    case 'piece':
      return <PiecePage key={route.id} id={route.id} />;
    case 'piece-by-mark':
      return <PieceByMark key={route.mark} mark={route.mark} />;
    case 'piece-label':
      return <LabelPage key={route.id} id={route.id} />;
    case 'routes':
      return <Routes />;
    case 'route':
      return <RoutePage key={route.id} id={route.id} />;
    case 'steel':
      return <SteelPage key={route.name} name={route.name} />;
    case 'heat':
      return <HeatPage />;
    case 'air':
      return <AirPage />;
    case 'gas':
      return <GasPage />;
    case 'alarms':
      return <AlarmsPage />;
    case 'alarm-review':
      return <AlarmReviewPage />;
    case 'alarm-journal':
      return <AlarmJournalPage />;
    case 'alarm-definitions':
      return <AlarmDefinitionsPage />;
    case 'setup':
      return <Setup section={route.section} />;
    case 'unknown':
      return <NotFound path={route.path} />;
    default:
      return route satisfies never;
  }
}
