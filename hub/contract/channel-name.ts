import { z } from 'zod';

/** A channel's name inside its node: a resolved SenML name (RFC 8428 section 4.5.1). */
export const ChannelName = z
  .string()
  .regex(
    /^[A-Za-z0-9][A-Za-z0-9\-:./_]{0,127}$/,
    'a SenML name: letters, digits and - : . / _ only, at most 128',
  );
