import highsLoader, { type Highs } from 'highs';

// The package is CommonJS: the types promise a namespace where Node hands over the function itself.
export const loadHighs = highsLoader as unknown as () => Promise<Highs>;
