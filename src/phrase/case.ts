/** "head gasket" → "Head gasket" */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Head gasket" → "head gasket": a name within a sentence */
export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
