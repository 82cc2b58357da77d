import type { ClockTable } from './say-clock.ts';
import type { ReasonTable } from './say-reason.ts';

/** Why a segment was not met, or only with doubts, in German. */
export const REASONS: ReasonTable = {
  'moved-on-early.soak': 'Zu früh weiter: die Haltezeit stand bei {soak} von {planned}',
  'moved-on-early.at': 'Zu früh weiter: bei {measured} von {target}',
  'moved-on-early.unseen': 'Zu früh weiter: {target} wurde nicht gesehen',
  'finished-early.soak': 'Zu früh beendet: die Haltezeit stand bei {soak} von {planned}',
  'finished-early.at': 'Zu früh beendet: bei {measured} von {target}',
  'finished-early.unseen': 'Zu früh beendet: {target} wurde nicht gesehen',
  'core-short':
    'Nach der Luft beendet: der Kern von {piece} hatte, gerechnet, {soak} von {planned}; die Luft {airTime}',
  'core-cold':
    'Nach der Luft beendet: der Kern von {piece} kam nie in die Toleranz, gerechnet {core} von {target}; die Luft hatte {airTime}',
  'core-unsure':
    'Der Kern von {piece} ist gerechnet, nicht gemessen: unter der kältesten Annahme hatte er {low} von {planned}',
  'not-begun': 'Nie begonnen',
  'not-confirmed': 'Niemand hat bestätigt, dass es getan ist',
  overshoot: '{over} über der Toleranz, {time} lang',
  'short-overshoot': '{over} über der Toleranz, {time} lang: kurz',
  blind: '{time} lang wurde nichts gemessen',
  interrupted: '{time} außerhalb der Toleranz, nachdem das Halten begonnen hatte',
  'rate-not-seen': 'Die Abkühlrate wurde nicht gemessen: kein Fühler am Werkstück',
  'heated-too-fast': 'Aufgeheizt mit {rate}, geplant {limit}',
  'heated-slowly': 'Langsam aufgeheizt: {rate}, geplant {limit}',
  'cooled-too-fast': 'Zu schnell abgekühlt: im Mittel {rate}, höchstens {limit} erlaubt, {time} zu schnell',
  'cooled-too-fast-briefly': '{time} lang schneller als {limit} abgekühlt',
  'cooled-too-slowly': 'Zu langsam abgekühlt: im Mittel {rate}, mindestens {limit} gewollt',
};

/** What the soak clock listens to. */
export const CLOCK: ClockTable = {
  core: 'Haltezeit am gerechneten Kern von {piece}',
  'core.corrected': 'Haltezeit am gerechneten Kern von {piece}, dem Fühler am Werkstück nachgeführt',
  'coldest-thermocouple': 'Haltezeit am kältesten Fühler',
};
