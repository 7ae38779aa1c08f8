import { setImmediate } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { inGroups } from '@/lib/store/in-groups';

/** Answers each number with its double; a group with a 13 in it fails as a whole. */
const doubling = (most: number) => {
  const groups: (readonly number[])[] = [];
  const put = inGroups(async (group: readonly number[]) => {
    groups.push(group);
    await setImmediate();
    if (group.includes(13)) throw new Error('unlucky');
    return group.map((one) => 2 * one);
  }, most);
  return { groups, put };
};

test('what comes alone is done at once', async () => {
  const { groups, put } = doubling(10);
  expect(await put(1)).toBe(2);
  expect(await put(2)).toBe(4);
  expect(groups).toEqual([[1], [2]]);
});

test('what comes while a group is being done makes the next one, and each gets its own answer', async () => {
  const { groups, put } = doubling(10);
  expect(await Promise.all([1, 2, 3, 4].map(put))).toEqual([2, 4, 6, 8]);
  expect(groups).toEqual([[1], [2, 3, 4]]);
});

test('whoever is answered can join the very next group', async () => {
  const { groups, put } = doubling(10);
  const two = async (first: number) => {
    await put(first);
    await put(first + 100);
  };
  await Promise.all([two(1), two(2), two(3)]);
  expect(groups).toEqual([[1], [2, 3, 101], [102, 103]]);
});

test('no group is larger than the most', async () => {
  const { groups, put } = doubling(2);
  await Promise.all([1, 2, 3, 4, 5].map(put));
  expect(groups).toEqual([[1], [2, 3], [4, 5]]);
});

test('in a group that fails, whoever is at fault fails alone', async () => {
  const { groups, put } = doubling(10);
  const went = await Promise.allSettled([1, 2, 13, 4].map(put));
  expect(went.map(({ status }) => status)).toEqual([
    'fulfilled',
    'fulfilled',
    'rejected',
    'fulfilled',
  ]);
  expect(groups).toEqual([[1], [2, 13, 4], [2], [13], [4]]);
  expect(await put(5)).toBe(10);
});

test('one that fails alone is not tried again', async () => {
  const { groups, put } = doubling(10);
  await expect(put(13)).rejects.toThrow('unlucky');
  expect(groups).toEqual([[13]]);
});

test('an answer that is missing is an error, not a silence', async () => {
  const put = inGroups((_: readonly number[]) => Promise.resolve([]), 10);
  await expect(put(1)).rejects.toThrow('a group was answered in part');
});
