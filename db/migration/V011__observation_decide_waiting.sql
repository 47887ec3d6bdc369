-- A look made by an adult who had lost access waits until somebody of the class takes it or leaves it.

create table waiting_verdict (
    district_id    int not null references district,
    observation_id uuid not null,
    taken          boolean not null,
    decided_by     uuid not null,
    decided_at     timestamptz not null default clock_timestamp(),
    primary key (district_id, observation_id),
    constraint waiting_verdict_of_look foreign key (district_id, observation_id) references observation,
    constraint waiting_verdict_by_adult foreign key (district_id, decided_by) references adult
);
comment on table waiting_verdict is 'What became of a look that waited; one without a verdict waits still and does not count';
comment on column waiting_verdict.district_id is 'District the row belongs to';
comment on column waiting_verdict.observation_id is 'The look';
comment on column waiting_verdict.taken is 'True: it counts from now on, as of its own day; false: it is kept and never counts';
comment on column waiting_verdict.decided_by is 'Adult of the class who decided';
comment on column waiting_verdict.decided_at is 'When';
call guard('waiting_verdict', true);
