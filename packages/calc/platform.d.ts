// What browsers, workers and Node all have, and no library of the compiler declares without the rest of a page.
declare function structuredClone<T>(value: T): T;
declare function btoa(text: string): string;
declare function atob(text: string): string;
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean });
  decode(input?: ArrayBuffer | Uint8Array): string;
}
