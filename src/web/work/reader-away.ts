/** Said when the reader itself cannot be had. */
export const readerAway =
  'The reader of letters has not reached this device. Try again when the bench can be reached, or type the lines.';
