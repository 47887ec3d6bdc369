-- The record of access: who asked for what of which child, when, with which interest, and whether it was given.
-- Children stand in it by a digest over a random key of their own: when the key goes, the lines stay and name nobody.

create table access_key (
    district_id int not null references district,
    child_id    uuid not null,
    key         bytea not null check (length(key) = 32),
    made_at     timestamptz not null default clock_timestamp(),
    primary key (district_id, child_id),
    constraint access_key_of_child foreign key (district_id, child_id) references child
);
comment on table access_key is 'The random key that ties lines of the record of access to a child';
comment on column access_key.district_id is 'District the row belongs to';
comment on column access_key.child_id is 'The child';
comment on column access_key.key is '32 random bytes; removed with the child';
comment on column access_key.made_at is 'When';
call guard('access_key', true);

create table access_head (
    district_id int primary key references district,
    seq         bigint not null check (seq >= 0),
    digest      text not null check (digest ~ '^([0-9a-f]{64})?$')
);
comment on table access_head is 'The newest line of each record of access, so that one taken from its end is missed';
comment on column access_head.district_id is 'District the row belongs to';
comment on column access_head.seq is 'Number of the newest line; 0 before the first';
comment on column access_head.digest is 'Its digest; empty before the first';
call guard('access_head', false);
grant update (seq, digest) on access_head to ${app_role};

create table access_entry (
    district_id  int not null references district,
    seq          bigint not null check (seq > 0),
    at           timestamptz not null,
    adult_id     uuid not null,
    what         text not null check (what ~ '^[a-z_]{1,40}$'),
    outcome      text not null check (outcome in ('given', 'denied')),
    party        text not null check (party in ('staff', 'family')),
    interest     text not null check (interest in ('teacher', 'co_teacher', 'aide', 'specialist', 'lead', 'none')),
    grant_id     uuid,
    child_digest text not null check (child_digest ~ '^[0-9a-f]{64}$'),
    previous     text not null check (previous ~ '^([0-9a-f]{64})?$'),
    digest       text not null check (digest ~ '^[0-9a-f]{64}$'),
    primary key (district_id, seq),
    constraint access_entry_by_adult foreign key (district_id, adult_id) references adult
);
create index access_entry_of_child on access_entry (district_id, child_digest, seq);
comment on table access_entry is 'A line of the record of access; each holds the digest of the one before it';
comment on column access_entry.district_id is 'District the row belongs to';
comment on column access_entry.seq is '1 for the first line of the district, without gaps';
comment on column access_entry.at is 'When';
comment on column access_entry.adult_id is 'Who asked';
comment on column access_entry.what is 'Page, print or file that was asked for';
comment on column access_entry.outcome is 'given or denied';
comment on column access_entry.party is 'For whom it was made: staff of the school, or the family';
comment on column access_entry.interest is 'Part the adult had in the child then; none when denied';
comment on column access_entry.grant_id is 'The grant it rested on; null for adults of the class and leads';
comment on column access_entry.child_digest is 'HMAC-SHA-256 of the child''s id under its key, in hex; of nobody where there was no such child';
comment on column access_entry.previous is 'Digest of the line before; empty for the first';
comment on column access_entry.digest is 'SHA-256 in hex over the other columns, joined by |, the time in microseconds since 1970';
call guard('access_entry', true);
