-- A loss that ended before it was said to: the later version stands in place of those made for it.

alter table block_day add column instead_of int check (instead_of > 1 and instead_of < version);
comment on column block_day.instead_of is 'This version and the later ones before the row''s own no longer count, since their loss ended early; null: none';
