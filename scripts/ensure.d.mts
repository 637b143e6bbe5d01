interface Package {
  readonly version?: string;
  readonly optional?: boolean;
  readonly devOptional?: boolean;
}

export function isAsLocked(
  locked: Readonly<Record<string, Package>>,
  installed: Readonly<Record<string, Package>>,
): boolean;
