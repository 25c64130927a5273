let bytesPerSample: i32 = 0;
let isFloat: bool = false;
let channels: i32 = 2;
let scale: f64 = 1;

export function setAny(float: bool, bytes: i32, channelCount: i32): void {
  isFloat = float;
  bytesPerSample = bytes;
  channels = channelCount;
  scale = Math.pow(2, 1 - <f64>(bytes << 3));
}

/** Converts frames of any format, one channel to both, to doubles of full scale 1. */
export function convertAny(address: usize, count: i32, out: usize): void {
  const rightOffset: usize = channels == 2 ? <usize>bytesPerSample : 0;
  const step = <usize>(bytesPerSample * channels);
  for (let n = 0; n < count; n++) {
    const at = address + <usize>n * step;
    v128.store(out + (<usize>n << 4), f64x2(sampleAt(at), sampleAt(at + rightOffset)));
  }
}

// @ts-ignore: decorator
@inline
function sampleAt(address: usize): f64 {
  if (isFloat) return bytesPerSample == 4 ? <f64>load<f32>(address) : load<f64>(address);
  if (bytesPerSample == 3) return <f64>(load<i32>(address - 1) >> 8) * scale;
  if (bytesPerSample == 2) return <f64>load<i16>(address) * scale;
  if (bytesPerSample == 4) return <f64>load<i32>(address) * scale;
  return <f64>(<i32>load<u8>(address) - 128) * scale;
}
