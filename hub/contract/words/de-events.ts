import type { EventTable } from './say-event.ts';

/** What happened, for the chart and the record, in German. */
export const EVENTS: EventTable = {
  'name.firing': 'Brand',
  'name.ramp': 'Rampe auf {target}',
  'name.soak': 'Halten bei {target}, {time}',
  'name.still-air': 'Abkühlen auf {target} an ruhender Luft',
  'name.furnace': 'Abkühlen auf {target} im Ofen',
  'name.ash': 'Abkühlen auf {target} in Asche',
  'name.vermiculite': 'Abkühlen auf {target} in Vermiculit',
  'name.quench': 'Abschrecken auf {target}',
  'segment-started': '{name}: begonnen',
  'segment-ended': '{name}: zu Ende',
  'segment-ended.confirmed': '{name}: vom Schmied beendet',
  'segment-ended.finished': '{name}: abgebrochen, der Brand wurde beendet',
  'finding-raised': '{title}. {message}',
  'finding-raised.unnamed': 'Etwas wurde bemerkt',
  'finding-cleared': 'Vorbei: {title}',
  'finding-cleared.unnamed': 'Vorbei',
  blind: 'Kein frischer Messwert: es wird nichts gezählt',
  seeing: 'Messwerte wieder da nach {gap}',
  confirmed: '{name}: vom Schmied bestätigt',
  'late-readings': 'Messwerte kamen spät; mit ihnen neu beurteilt',
  'arrest.heating': 'Haltepunkt beim Erwärmen bei {celsius}: der Stahl am Fühler wurde Austenit ({sure})',
  'arrest.cooling':
    'Haltepunkt beim Abkühlen bei {celsius}: der Austenit am Fühler wandelte sich zurück ({sure})',
  'sure.well': 'deutlich',
  'sure.fairly': 'ziemlich deutlich',
};
