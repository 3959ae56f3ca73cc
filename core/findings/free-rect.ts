/** Room on a face, for those who look for it among the findings: it lives in core/room. */

export * from '../room/free-rect';
