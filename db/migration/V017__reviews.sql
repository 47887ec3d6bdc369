-- A review: one sitting per class and week. Choices are added while it is open; closing adds the seal, and nothing changes.

create table review (
    district_id int not null references district,
    review_id   uuid not null default gen_random_uuid(),
    class_id    uuid not null,
    unit_id     uuid not null,
    week        date not null,
    opened_by   uuid not null,
    opened_at   timestamptz not null default clock_timestamp(),
    primary key (district_id, review_id),
    constraint review_once_a_week unique (district_id, class_id, unit_id, week),
    constraint review_of_class foreign key (district_id, class_id) references classroom,
    constraint review_of_unit foreign key (district_id, unit_id) references unit,
    constraint review_by_adult foreign key (district_id, opened_by) references adult,
    constraint review_week_begins_on_monday check (extract(isodow from week) = 1)
);
comment on table review is 'One sitting that decides for a class in a week';
comment on column review.district_id is 'District the row belongs to';
comment on column review.review_id is 'Made here';
comment on column review.class_id is 'The class';
comment on column review.unit_id is 'The unit in hand';
comment on column review.week is 'Monday of the week';
comment on column review.opened_by is 'Who began it';
comment on column review.opened_at is 'When';

create table review_choice (
    district_id int not null references district,
    review_id   uuid not null,
    child_id    uuid not null,
    turn        int not null check (turn > 0),
    choice      text not null check (choice in ('accept', 'keep', 'other', 'defer', 'own_call')),
    tier        text not null check (tier in ('support', 'on_level', 'extension')),
    until       date,
    reason      text not null default '' check (length(reason) <= 2000),
    suggested   text not null check (suggested in ('support', 'on_level', 'extension')),
    verdict     text not null check (verdict in ('move', 'stay', 'not_enough')),
    chosen_by   uuid not null,
    chosen_at   timestamptz not null default clock_timestamp(),
    primary key (district_id, review_id, child_id, turn),
    constraint review_choice_in_review foreign key (district_id, review_id) references review,
    constraint review_choice_of_child foreign key (district_id, child_id) references child,
    constraint review_choice_by_adult foreign key (district_id, chosen_by) references adult,
    constraint review_choice_says_why check (choice not in ('other', 'defer') or length(reason) > 0),
    constraint review_choice_defers_to_a_day check ((choice = 'defer') = (until is not null))
);
comment on table review_choice is 'What an adult chose for a child in a review; the newest turn holds, earlier ones stay';
comment on column review_choice.district_id is 'District the row belongs to';
comment on column review_choice.review_id is 'The review';
comment on column review_choice.child_id is 'The child';
comment on column review_choice.turn is '1 for the first choice on this child; two adults cannot take the same turn';
comment on column review_choice.choice is 'accept, keep, other, defer; own_call is a call made before the suggestion was shown';
comment on column review_choice.tier is 'Tier from now on; for defer the one in force';
comment on column review_choice.until is 'Day to look again, for defer';
comment on column review_choice.reason is 'The adult''s words; required for another tier and for defer';
comment on column review_choice.suggested is 'What the rules said when it was chosen';
comment on column review_choice.verdict is 'move, stay or not_enough when it was chosen';
comment on column review_choice.chosen_by is 'Who chose';
comment on column review_choice.chosen_at is 'When';

create table review_seal (
    district_id int not null references district,
    review_id   uuid not null,
    sealed_on   date not null,
    content     text not null,
    digest      text not null check (digest ~ '^[0-9a-f]{64}$'),
    sealed_by   uuid not null,
    sealed_at   timestamptz not null default clock_timestamp(),
    primary key (district_id, review_id),
    constraint review_seal_of_review foreign key (district_id, review_id) references review,
    constraint review_seal_by_adult foreign key (district_id, sealed_by) references adult
);
comment on table review_seal is 'A review as it was closed; later evidence marks it and never changes it';
comment on column review_seal.district_id is 'District the row belongs to';
comment on column review_seal.review_id is 'The review';
comment on column review_seal.sealed_on is 'School day it was closed on; evidence up to its end counted';
comment on column review_seal.content is 'JSON: per child what was suggested, on which evidence and versions, who chose what and why';
comment on column review_seal.digest is 'SHA-256 of the content, in hex';
comment on column review_seal.sealed_by is 'Who closed it';
comment on column review_seal.sealed_at is 'When';

call guard('review', true);
call guard('review_choice', true);
call guard('review_seal', true);
