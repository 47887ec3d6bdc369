-- Where the lost minutes of a block lay, so that its clock stands still in them.

alter table block_day add column lost_from time check (lost_from is null or lost_minutes > 0);
comment on column block_day.lost_from is 'When the minutes lost before this version began, school time; null as the day began and in versions older than this column';
