import { route } from '@/lib/server';
import { writeShopSettings } from '@/lib/server/shop-settings';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ PUT: writeShopSettings });
