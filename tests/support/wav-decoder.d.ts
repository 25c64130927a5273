declare module 'wav-decoder' {
  interface Decoded {
    sampleRate: number;
    channelData: Float32Array[];
  }
  const decoder: {
    decode: { sync(bytes: ArrayBuffer, options?: { symmetric?: boolean }): Decoded };
  };
  export default decoder;
}
