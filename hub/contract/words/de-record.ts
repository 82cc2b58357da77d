import type { RecordTables } from './say-record.ts';

/** What a firing did to a piece, in German. */
export const RECORD: RecordTables = {
  piece: {
    'not-judged-yet': 'Der Brand läuft noch',
    abandoned: 'Der Brand wurde abgebrochen',
    'segment-not-met': 'Abschnitt {segment}: {why}',
    'segment-doubtful': 'Abschnitt {segment}: {why}',
    'overshoot-not-in-piece':
      'Der Ofen ging in Abschnitt {segment} über {limit}; die Haut dieses Stücks, gerechnet, nicht',
    'core-soaked': 'Sein Kern hatte {soak} von {planned} auf Temperatur',
    'core-short': 'Sein Kern hatte {soak} von {planned} auf Temperatur',
    'core-not-reached': 'Sein Kern kam nie in die Toleranz von {target}: höchstens {reached}',
    'core-unsure': 'Unter der kältesten Annahme über den Ofen hatte sein Kern {low} von {planned}',
    'core-of-slower': 'Nach dem Kern des trägsten Stücks beurteilt: der eigene war nicht später da',
    'probe-on-load': 'Nach dem Fühler am Werkstück beurteilt',
    'judged-by-air': 'Nach der Luft beurteilt: kein Kern konnte gerechnet werden',
    'nothing-measured': 'Es wurde nichts gemessen',
    'step-not-said': 'Niemand hat gesagt, wozu dieser Brand war: nur was für jeden gilt, wurde angesehen',
    'steel-not-known':
      'Von seinem Stahl ist hier nichts mehr bekannt: Temperaturen wurden nicht daran gehalten',
    'no-window-known': 'Für diesen Schritt von {steel} ist keine Temperatur bekannt: siehe Datenblatt',
    'step-not-recommended': '{steel} darf diesen Schritt nicht gehen: er härtet oder reißt',
    'in-window':
      'Gehalten bei {reached}, höchstens {peak}: innerhalb {lowTemp} bis {highTemp}, bekannt auf ±{slack}',
    'too-cold-for-step': 'Gehalten bei {reached}; dieser Schritt beginnt bei {limit}',
    'harden-below-window':
      'Gehalten bei {reached}, unter dem Härtefenster ab {limit}: härtet vielleicht nicht',
    'normalise-below-upper-critical':
      'Gehalten bei {reached}: ganz Austenit ab etwa {limit} ({lowTemp} bis {highTemp})',
    'too-hot-for-steel': 'Seine Haut erreichte {reached}: zu heiß für {steel}, höchstens {limit}',
    'harden-above-window':
      'Seine Haut erreichte {reached}, über dem Härtefenster bis {limit}: grobes Korn, Restaustenit',
    'above-ac1':
      'Seine Haut erreichte {reached}: die Umwandlung beginnt ab etwa {limit}, das macht diesen Schritt zunichte',
    'section-does-not-harden': '{thickness} mm härten in {fluid} nicht durch: etwa {critical} mm tun es',
    'temper-as-wanted': 'Sollte {hrc} HRC haben ({lowHrc}–{highHrc}), gewollt {wantedHrc} HRC',
    'temper-too-hard': 'Hat {hrc} HRC ({lowHrc}–{highHrc}), härter als die gewollten {wantedHrc} HRC',
    'temper-too-soft': 'Hat {hrc} HRC ({lowHrc}–{highHrc}), weicher als die gewollten {wantedHrc} HRC',
    'temper-unsure': 'Sollte {hrc} HRC haben ({lowHrc}–{highHrc}); niemand hat gesagt, was gewollt war',
    'temper-not-known': 'Was dieses Anlassen übrig ließ, ist nicht bekannt: Härte messen',
    'cooling-met': 'Abgekühlt mit {rate} bis {to}, höchstens {rateLimit} erlaubt',
    'cooling-too-fast':
      'Abgekühlt mit {rate} bis {to} (schlimmstens {worstRate}), höchstens {rateLimit} erlaubt',
    'cooling-not-followed': 'Das langsame Abkühlen, höchstens {rateLimit}, wurde nicht bis {to} verfolgt',
    'cooling-computed': 'Sein Abkühlen wurde gerechnet, nicht gemessen: kein Fühler ging mit',
  },
  verdict: {
    pending: 'Noch nicht beurteilt',
    met: 'Erfüllt: {why}',
    'met.plain': 'Erfüllt',
    'met-with-doubts': 'Mit Zweifeln erfüllt: {why}',
    'not-met': 'Nicht erfüllt: {why}',
  },
  judged: {
    ended: 'Beim Ende beurteilt, nach Regeln {rules}: {was}',
    'late-readings': 'Wegen später Messwerte neu beurteilt, nach Regeln {rules}: {was}',
    'newer-rules': 'Neu beurteilt nach Regeln {rules}: {was}',
    asked: 'Auf Wunsch neu beurteilt, nach Regeln {rules}: {was}',
  },
  was: {
    pending: 'nicht beurteilt',
    met: 'erfüllt',
    'met-with-doubts': 'mit Zweifeln erfüllt',
    'not-met': 'nicht erfüllt',
  },
  figure: {
    'decarburised-depth': 'Nicht tiefer entkohlt als {high} {unit} (die Formeln sagen {low}–{high})',
    scale: 'Zunder {value} {unit} ({low}–{high})',
    'metal-loss': 'Abbrand je Fläche {value} {unit} ({low}–{high})',
    grain: 'Korn etwa {value} {unit} ({low}–{high})',
    'temper-parameter': 'Anlassparameter {value} {unit} ({low}–{high})',
    'temper-hours': 'Wie {value} {unit} auf der höchsten Temperatur',
    'temper-hardness': 'Verbliebene Härte {value} {unit} ({low}–{high})',
    none: '{name}: es wird nichts behauptet',
  },
  figureName: {
    'decarburised-depth': 'Entkohlungstiefe',
    scale: 'Zunder',
    'metal-loss': 'Abbrand',
    grain: 'Korn',
    'temper-parameter': 'Anlassparameter',
    'temper-hours': 'Zeit auf der höchsten Temperatur',
    'temper-hardness': 'Verbliebene Härte',
  },
  caution: {
    'above-range': 'eine Weile heißer, als die Formel reicht: mindestens so viel',
    'ferrite-rim': 'zwischen Ac1 und 912 °C wächst ein Ferritsaum schneller, als gezählt ist',
    'long-gap': 'Messwerte, die mehr als fünf Minuten auseinander liegen, wurden gerade verbunden',
    'uncounted-below-700': 'Zunder zwischen 570 und 700 °C ist nicht gezählt',
    'air-no-flame': 'für Luft; feuchtes Ofengas kann mehr machen, abgeschlagener Zunder auch',
    coarsening: 'über 950 °C, wo sich löst, was die Körner hält, wachsen sie in Minuten',
    'trend-only': 'zum Vergleichen von Bränden, keine Messung',
    'hardened-through': 'für Stahl, der vorher ganz gehärtet war',
    'below-scale': 'unter 20 HRC ist die Skala nicht bestimmt',
  },
  noClaim: {
    'never-austenite': 'es wurde nie zu Austenit, also wurde kein Kohlenstoff als verloren gezählt',
    'never-hot-enough': 'es kam nie in den Bereich der Formel',
    'steel-not-covered': 'keine Formel gilt für diesen Stahl',
    'too-few-points': 'es wurde zu wenig gemessen',
  },
};
