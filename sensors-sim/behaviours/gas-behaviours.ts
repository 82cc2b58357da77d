/** What goes wrong between cylinder and flame. */
import { z } from 'zod';
import { share, timing } from './fields.ts';

const contents = (kilograms: number) =>
  z.number().min(0).max(12).default(kilograms).describe('Contents of the cylinder put on');
const liquidCelsius = (celsius: number) => z.number().min(-45).max(40).default(celsius);

export const GAS_BEHAVIOURS = [
  z
    .strictObject({
      name: z.literal('falling-gas'),
      ...timing,
      halvingMinutes: z
        .number()
        .gt(0)
        .max(600)
        .default(2)
        .describe('Ice closes the way: pressure halves in this'),
      floorPascals: z.number().min(0).max(80_000).default(1000),
    })
    .describe('Ice in the regulator: pressure falls while the cylinder is full'),
  z
    .strictObject({
      name: z.literal('weak-cylinder'),
      ...timing,
      massKilograms: contents(0.4),
      liquidCelsius: liquidCelsius(-38),
    })
    .describe('A cylinder both cold and nearly empty is put on'),
  z
    .strictObject({
      name: z.literal('empty-cylinder'),
      ...timing,
      massKilograms: contents(0.12),
      liquidCelsius: liquidCelsius(16),
    })
    .describe('A warm cylinder with the last of its gas: good pressure, then none'),
  z
    .strictObject({
      name: z.literal('cold-cylinder'),
      ...timing,
      massKilograms: contents(1.2),
      airCelsius: z.number().min(-40).max(40).default(-30).describe('Air around the cylinder'),
    })
    .describe('A cylinder out in the frost: boiling chills it, pressure sags over minutes, liquid is left'),
  z
    .strictObject({
      name: z.literal('cylinder-change'),
      ...timing,
      massKilograms: contents(9),
      liquidCelsius: liquidCelsius(16),
      changeSeconds: z.number().min(1).max(1800).default(60).describe('Shut for so long'),
    })
    .describe('The cylinder is shut and another put on'),
  z
    .strictObject({ name: z.literal('shut-valve'), ...timing })
    .describe('The cylinder valve is shut, or an excess-flow device has tripped: nothing at once'),
  z
    .strictObject({
      name: z.literal('regulator-droop'),
      ...timing,
      droopShare: share.default(0.5).describe('Outlet falls by this share at 2 kg/h'),
      extraFlowShare: z.number().min(0).max(3).default(1).describe('What a second burner takes'),
    })
    .describe('A second burner on a tired regulator: more flows and the outlet falls'),
  z
    .strictObject({
      name: z.literal('regulator-creep'),
      ...timing,
      pascalsPerMinute: z.number().gt(0).max(1e6).default(4000),
      settingPascals: z.number().gt(0).max(400_000).default(30_000).describe('Where it stands at first'),
    })
    .describe('A leaking seat: with the burner shut after the heat, the outlet climbs and climbs'),
  z
    .strictObject({
      name: z.literal('hose-restriction'),
      ...timing,
      lossPascals: z
        .number()
        .gt(0)
        .max(5e6)
        .default(400_000)
        .describe('Lost at 2 kg/h, with the flow squared'),
      overMinutes: z.number().min(0).max(120).default(3).describe('Until it is whole'),
    })
    .describe(
      'A kinked hose or a half shut valve before the gauge: less comes through at good cylinder pressure',
    ),
  z
    .strictObject({
      name: z.literal('blocked-jet'),
      ...timing,
      openShare: z.number().gt(0).max(1).default(0.4),
    })
    .describe('Dirt in the jet, behind the gauge: pressure stands, less flows, the forge cools'),
  z
    .strictObject({
      name: z.literal('flame-out'),
      ...timing,
      noticedAfterSeconds: z.number().min(0).max(7200).default(600).describe('Then the smith closes the gas'),
    })
    .describe('The flame goes out and the gas flows on, until the smith closes it'),
  z
    .strictObject({
      name: z.literal('gas-left-on'),
      ...timing,
      pascals: z.number().gt(0).max(400_000).default(30_000),
      burner: z
        .enum(['shut', 'unlit'])
        .default('shut')
        .describe('shut: the hose stands under pressure; unlit: gas flows out and nothing burns'),
    })
    .describe('Between firings and after closing, the gas is not shut at the cylinder'),
  z
    .strictObject({
      name: z.literal('gas-escape'),
      ...timing,
      kilogramsPerHour: z.number().gt(0).max(20).default(0.4),
    })
    .describe('A hose leaks while the cylinder is open: mass goes that no burner takes'),
] as const;
