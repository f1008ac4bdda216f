/** The ways the double can be told to misbehave, each counted down as it happens. */
export interface RestFault {
  readonly status: number;
  /** How many requests it hits; default 1. */
  readonly times?: number;
  /** Which requests, as "METHOD /path"; default all. */
  readonly on?: RegExp;
  /** For 429. */
  readonly retryAfterSeconds?: number;
  /** A Discord error code to tell in the body. */
  readonly code?: number;
  /** The request is carried out, and only its response is lost. */
  readonly afterProcessing?: boolean;
}

export interface Misbehaviour {
  readonly rest: (fault: RestFault) => void;
  /** The fault that hits this request, if any; it is counted. */
  readonly hit: (method: string, path: string) => RestFault | undefined;
  /** Heartbeats go unanswered while set. */
  withholdHeartbeatAcks: boolean;
  /** So many resumes are refused. */
  refuseResumes: number;
  /** So many dispatches are sent twice. */
  duplicateDispatches: number;
  /** Identify is answered with this close code. */
  closeIdentify: number | null;
}

export const createMisbehaviour = (): Misbehaviour => {
  const faults: { fault: RestFault; left: number }[] = [];
  return {
    rest: (fault) => {
      faults.push({ fault, left: fault.times ?? 1 });
    },
    hit: (method, path) => {
      const found = faults.find(({ fault, left }) => left > 0 && (fault.on ?? /./u).test(`${method} ${path}`));
      if (found === undefined) return undefined;
      found.left--;
      return found.fault;
    },
    withholdHeartbeatAcks: false,
    refuseResumes: 0,
    duplicateDispatches: 0,
    closeIdentify: null,
  };
};
