interface Detector {
  detect(source: ImageData): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorKind {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
}

/** Reads the QR codes of a picture by what the system has for it; null where it has nothing. */
export const systemDetector = async (): Promise<((image: ImageData) => Promise<string[]>) | null> => {
  const { BarcodeDetector } = globalThis as { BarcodeDetector?: DetectorKind };
  const formats = (await BarcodeDetector?.getSupportedFormats().catch(() => [])) ?? [];
  if (!BarcodeDetector || !formats.includes('qr_code')) return null;
  const detector = new BarcodeDetector({ formats: ['qr_code'] });
  return async (image) => (await detector.detect(image)).map((one) => one.rawValue);
};
