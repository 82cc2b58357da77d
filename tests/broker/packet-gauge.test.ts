import fc from 'fast-check';
import { generate } from 'mqtt-packet';
import { describe, expect, test } from 'vitest';
import { createPacketGauge } from '../../hub/broker/packet-gauge.ts';

function publish(bytes: number): Buffer {
  const payload = Buffer.alloc(bytes, 0x82);
  return generate({ cmd: 'publish', topic: 't', payload, qos: 0, dup: false, retain: false });
}

describe('the packet gauge', () => {
  test('lets packets through up to its bound, however the bytes are cut', () => {
    const sizes = fc.array(fc.integer({ min: 0, max: 20_000 }), { minLength: 1, maxLength: 6 });
    const cuts = fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(sizes, cuts, (bytes, lengths) => {
        const packets = bytes.map(publish);
        const gauge = createPacketGauge(Math.max(...packets.map(({ length }) => length)));

        expect(pieces(Buffer.concat(packets), lengths).map((piece) => gauge.look(piece))).not.toContainEqual(
          expect.any(Number),
        );
      }),
      { numRuns: 60 },
    );
  });

  test('names the whole size of the first packet beyond it, from its header alone', () => {
    const gauge = createPacketGauge(1000);
    const large = publish(1000);

    expect(gauge.look(Buffer.concat([publish(900), large.subarray(0, 3)]))).toBe(large.length);
  });

  test('finds it byte by byte as well', () => {
    const gauge = createPacketGauge(100);
    const bytes = Buffer.concat([publish(50), publish(0), publish(200)]);
    const found = [...bytes].map((byte) => gauge.look(Uint8Array.of(byte))).filter((size) => size !== null);

    expect(found[0]).toBe(publish(200).length);
  });

  /** MQTT 3.1.1 table 2.4: the largest value of one to four length bytes. */
  test.each([
    [[0x30, 0x7f], 127],
    [[0x30, 0xff, 0x7f], 16_383],
    [[0x30, 0xff, 0xff, 0x7f], 2_097_151],
    [[0x30, 0xff, 0xff, 0xff, 0x7f], 268_435_455],
  ])('reads the remaining length of %j', (header, length) => {
    expect(createPacketGauge(1).look(Uint8Array.from(header))).toBe(length + header.length);
  });

  test('a packet of exactly the bound passes', () => {
    const packet = publish(500);

    expect(createPacketGauge(packet.length).look(packet)).toBeNull();
    expect(createPacketGauge(packet.length - 1).look(packet)).toBe(packet.length);
  });
});

function pieces(bytes: Buffer, lengths: readonly number[]): Buffer[] {
  const cut: Buffer[] = [];
  for (let place = 0, turn = 0; place < bytes.length; turn += 1) {
    const length = lengths[turn % lengths.length] ?? 1;
    cut.push(bytes.subarray(place, place + length));
    place += length;
  }
  return cut;
}
