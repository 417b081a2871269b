//! The words of the couple's preparation list: for people who have never bought a ring.

pub mod asked;
pub mod guide;
pub mod handing;
pub mod pages;
pub mod taking;
