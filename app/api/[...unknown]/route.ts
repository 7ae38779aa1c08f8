import { problem } from '@/lib/server';

export const dynamic = 'force-dynamic';

/** Whatever has no address here is refused in the same form as every other error. */
const nothing = (): Response => problem('notFound', 'There is nothing at this address.');

export { nothing as GET, nothing as POST, nothing as PUT, nothing as PATCH, nothing as DELETE };
