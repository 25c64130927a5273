/** The bits of a generator x^8 + … or x^16 + …, without the highest. */
const GENERATOR_8 = 0x07;
const GENERATOR_16 = 0x8005;

/** By byte, what it leaves as a remainder. */
const TABLE_8 = Uint8Array.from({ length: 256 }, (_, byte) => remainder(byte, GENERATOR_8, 8));
const TABLE_16 = Uint16Array.from({ length: 256 }, (_, byte) => {
  return remainder(byte << 8, GENERATOR_16, 16);
});
/** The same where one, two … seven bytes follow it. */
const TABLE_16_1 = followed(TABLE_16);
const TABLE_16_2 = followed(TABLE_16_1);
const TABLE_16_3 = followed(TABLE_16_2);
const TABLE_16_4 = followed(TABLE_16_3);
const TABLE_16_5 = followed(TABLE_16_4);
const TABLE_16_6 = followed(TABLE_16_5);
const TABLE_16_7 = followed(TABLE_16_6);

/**
 * CRC-8 of a stretch: polynomial x^8 + x^2 + x + 1, begun with 0. Over a frame's header and the byte
 * of its CRC it is 0.
 * Source: RFC 9639, 9.1.8; the check value of "123456789" is 0xF4 (catalogues name it CRC-8/SMBUS).
 */
export function crc8(bytes: Uint8Array, from: number, until: number): number {
  let crc = 0;
  for (let at = from; at < until; at++) crc = TABLE_8[crc ^ bytes[at]!]!;
  return crc;
}

/**
 * CRC-16 of a stretch: polynomial x^16 + x^15 + x^2 + 1, begun with `crc`. Over a whole frame with
 * its CRC it is 0.
 * @param crc of what comes before; 0 at the beginning
 * Source: RFC 9639, 9.3; the check value of "123456789" is 0xFEE8 (catalogues: CRC-16/UMTS).
 */
export function crc16(bytes: Uint8Array, from: number, until: number, crc = 0): number {
  let at = from;
  let rest = crc;
  // Eight bytes at a time: none waits for the one before it.
  for (; at + 8 <= until; at += 8) {
    rest =
      TABLE_16_7[(rest >>> 8) ^ bytes[at]!]! ^
      TABLE_16_6[(rest & 0xff) ^ bytes[at + 1]!]! ^
      TABLE_16_5[bytes[at + 2]!]! ^
      TABLE_16_4[bytes[at + 3]!]! ^
      TABLE_16_3[bytes[at + 4]!]! ^
      TABLE_16_2[bytes[at + 5]!]! ^
      TABLE_16_1[bytes[at + 6]!]! ^
      TABLE_16[bytes[at + 7]!]!;
  }
  for (; at < until; at++) rest = ((rest << 8) & 0xffff) ^ TABLE_16[(rest >>> 8) ^ bytes[at]!]!;
  return rest;
}

/** Eight bits shifted through: value·x^8 modulo the generator. */
function remainder(value: number, generator: number, width: 8 | 16): number {
  const top = 2 ** (width - 1);
  let rest = value;
  for (let bit = 0; bit < 8; bit++) {
    rest = rest >= top ? ((2 * rest) % (2 * top)) ^ generator : 2 * rest;
  }
  return rest;
}

function followed(table: Uint16Array): Uint16Array {
  return table.map((rest) => ((rest << 8) & 0xffff) ^ TABLE_16[rest >>> 8]!);
}
