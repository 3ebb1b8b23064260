/**
 * Why there is no picture: `denied` by the person or the browser; `none`, no camera; `busy`, another app has it;
 * `unsupported`, this browser gives pages no camera, or not to one without https.
 */
export type CameraTrouble = 'denied' | 'none' | 'busy' | 'unsupported';

const TROUBLE: Readonly<Record<string, CameraTrouble>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotFoundError: 'none',
  OverconstrainedError: 'none',
};

/** A camera that is on. */
export interface Camera {
  /** Switches it off. */
  stop(): void;
}

/**
 * Asks for the camera at the phone's back and shows it in a video element.
 * @param wanted asked again when there is a picture: false switches the camera off at once
 * @param onEnded the camera was taken away
 */
export const openCamera = async (
  video: HTMLVideoElement,
  wanted: () => boolean,
  onEnded: () => void,
): Promise<Camera | CameraTrouble> => {
  // Absent on pages without https, whatever the type says.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices) return 'unsupported';
  let stream: MediaStream | undefined;
  const stop = (): void => {
    stream?.getTracks().forEach((track) => track.stop());
    video.srcObject = null;
  };
  try {
    stream = await devices.getUserMedia({
      audio: false,
      video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } },
    });
    // A track that we stop ourselves doesn't say so.
    stream.getTracks().forEach((track) => track.addEventListener('ended', onEnded));
    if (wanted()) {
      video.srcObject = stream;
      await video.play();
    } else stop();
    return { stop };
  } catch (error) {
    stop();
    return TROUBLE[(error as Error).name] ?? 'busy';
  }
};
