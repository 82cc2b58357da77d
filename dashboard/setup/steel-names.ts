import { ownSteelWords } from '../words/setup-steels.ts';

const NAMES: Readonly<Record<string, string>> = {
  name: ownSteelWords.name,
  note: ownSteelWords.note,
  windows: ownSteelWords.windows,
  lowCelsius: ownSteelWords.low,
  highCelsius: ownSteelWords.high,
  from: ownSteelWords.from,
  maxCoolingCelsiusPerHour: ownSteelWords.cooling,
  coolToCelsius: ownSteelWords.coolTo,
};

/** "windows.1.lowCelsius" is "Step 2, From"; "composition.C" is "C". */
export function steelFieldName(path: string): string {
  const [first = '', second = '', third = ''] = path.split('.');
  if (first === 'composition') return second || ownSteelWords.composition;
  if (first === 'windows' && third !== '') {
    return `${ownSteelWords.windowTitle(Number(second) + 1)}, ${NAMES[third] ?? third}`;
  }
  return NAMES[path] ?? path;
}
