-- What happened at the sign-in of an adult, shown to that adult. Open sessions themselves live in the server's memory.

create table sign_in_event (
    district_id int not null references district,
    event_id    uuid not null default gen_random_uuid(),
    adult_id    uuid not null,
    what        text not null check (what in ('signed_in', 'refused', 'signed_out', 'password_set', 'session_ended',
                  'others_ended')),
    address     text not null default '' check (length(address) <= 64),
    device      text not null default '' check (length(device) <= 64),
    happened_at timestamptz not null default clock_timestamp(),
    primary key (district_id, event_id),
    constraint sign_in_event_of_adult foreign key (district_id, adult_id) references adult
);
create index sign_in_event_newest on sign_in_event (district_id, adult_id, happened_at desc);
comment on table sign_in_event is 'What happened at the sign-in of an adult, told to that adult alone; no child is in it';
comment on column sign_in_event.district_id is 'District the row belongs to';
comment on column sign_in_event.event_id is 'Made here';
comment on column sign_in_event.adult_id is 'Whose sign-in';
comment on column sign_in_event.what is 'signed_in; refused: the password did not fit; signed_out; password_set: by the adult; session_ended and others_ended: from the list of sessions';
comment on column sign_in_event.address is 'Network address it came from; that of a proxy where one stands before the server';
comment on column sign_in_event.device is 'Kind of browser and system, as the browser names itself; empty when it is none of those known';
comment on column sign_in_event.happened_at is 'When';
call guard('sign_in_event', true);
