import { describe, expect, it } from 'vitest';
import { eyeMove, movedPose, type EyeMove } from '../../../renderer/drawing/eye-keys';
import { roomPose } from '../../../renderer/drawing/poses';

const SIZE = { width: 4, length: 6, height: 2.5 };
const move = (key: string, shift = false): EyeMove => {
  const found = eyeMove(key, shift);
  if (!found) throw new Error(`${key} means nothing`);
  return found;
};

describe('the eye by keyboard', () => {
  it('turns round the room and back, and no farther than overhead', () => {
    const pose = roomPose(SIZE, 1.5);
    const turned = movedPose(pose, move('ArrowRight'));
    expect(turned.theta).toBeGreaterThan(pose.theta);
    expect(movedPose(turned, move('ArrowLeft')).theta).toBeCloseTo(pose.theta, 12);
    let up = pose;
    for (let n = 0; n < 40; n++) up = movedPose(up, move('ArrowUp'));
    expect(up.phi).toBeGreaterThan(0);
    expect(up.target).toEqual(pose.target);
  });

  it('moves the room with Shift, without turning it', () => {
    const pose = roomPose(SIZE, 1.5);
    const moved = movedPose(pose, move('ArrowRight', true));
    expect(moved.theta).toBe(pose.theta);
    expect(moved.target.distanceTo(pose.target)).toBeGreaterThan(0.05);
    const back = movedPose(moved, move('ArrowLeft', true));
    expect(back.target.distanceTo(pose.target)).toBeLessThan(1e-9);
  });

  it('zooms in and out, and leaves other keys alone', () => {
    const pose = roomPose(SIZE, 1.5);
    const near = movedPose(pose, move('+'));
    expect(near.distance).toBeLessThan(pose.distance);
    expect(movedPose(near, move('-')).distance).toBeCloseTo(pose.distance, 9);
    expect(eyeMove('a', false)).toBeNull();
  });
});
