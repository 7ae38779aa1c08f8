import { roleSchema, type Role } from '@/lib/people';

export const roles: readonly Role[] = roleSchema.options;

export const roleWords: Readonly<Record<Role, string>> = {
  mechanic: 'Mechanics',
  foreman: 'Foremen',
  writer: 'Writers',
  admin: 'Administrators',
};
