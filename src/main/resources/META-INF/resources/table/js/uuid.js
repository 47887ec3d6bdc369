/**
 * Identifiers of looks, made on the tablet at the tap: UUID version 7 (RFC 9562, section 5.7).
 * 48 bits of milliseconds, then a 12-bit counter so that two taps in one millisecond keep their order,
 * then 62 random bits. An identifier is no secret and opens nothing.
 */
let lastMillis = -1;
let counter = 0;

export function uuidv7(millis = Date.now()) {
  const bytes = new Uint8Array(16);
  crypto.getRandomValues(bytes);
  // A clock set back must not break the order of what was tapped: the last time is kept until it is passed.
  const forward = millis > lastMillis || lastMillis - millis > 1000;
  if (forward) {
    lastMillis = millis;
    counter = ((bytes[6] & 0x07) << 8) | bytes[7];
  } else {
    counter += 1;
    if (counter > 0xfff) {
      counter = 0;
      lastMillis += 1;
    }
  }
  let rest = lastMillis;
  for (let i = 5; i >= 0; i -= 1) {
    bytes[i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  bytes[6] = 0x70 | (counter >> 8);
  bytes[7] = counter & 0xff;
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
