import { useEffect, useRef, type RefObject } from 'react';

/** The value of the last render, for callbacks that outlive it. */
export const useLatest = <T>(value: T): RefObject<T> => {
  const ref = useRef(value);
  useEffect(() => {
    ref.current = value;
  });
  return ref;
};
