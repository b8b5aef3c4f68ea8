// What browsers, workers and Node all have, and no library of the compiler declares without the rest of a page.
declare function structuredClone<T>(value: T): T;
declare function btoa(text: string): string;
declare function atob(text: string): string;
declare class TextEncoder {
  encode(text: string): Uint8Array<ArrayBuffer>;
}
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean });
  decode(input?: ArrayBuffer | Uint8Array): string;
}
interface ByteStream {
  getReader(): { read(): Promise<{ done: boolean; value?: Uint8Array }>; cancel(): Promise<void> };
}
interface ByteSink {
  getWriter(): { write(bytes: Uint8Array<ArrayBuffer>): Promise<void>; close(): Promise<void> };
}
declare class CompressionStream {
  constructor(format: "deflate-raw");
  readonly readable: ByteStream;
  readonly writable: ByteSink;
}
declare class DecompressionStream {
  constructor(format: "deflate-raw");
  readonly readable: ByteStream;
  readonly writable: ByteSink;
}
