//! The command as people and scripts meet it: exit code, stdout and stderr together.

mod bench;
mod reference;

mod air;
mod bad_input;
mod completions;
mod cut_jobs;
mod cut_list;
mod cut_stop;
mod demo_write;
mod hang;
mod help;
mod job_advise;
mod job_check;
mod job_convert;
mod job_draw;
mod job_largest_art;
mod job_new;
mod job_place;
mod job_schema;
mod job_sizes;
mod job_ticket;
mod job_weight;
mod length_read;
mod light;
mod material_list;
mod material_show;
mod money;
mod papers;
mod prices;
mod quote_print;
mod serve;
mod setting_list;
mod setting_show;
mod usage;
