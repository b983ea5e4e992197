//! A plan's text: it is read or it has faults, each in its place; what was read is printed and read
//! again as the same, and its sessions are laid out.
#![no_main]

use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::Plan;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let catalogue = Catalogue::builtin();
    match Plan::read_bytes(bytes, &catalogue) {
        Ok(file) => {
            let printed = file.plan.print(&catalogue);
            match Plan::read(&printed, &catalogue) {
                Ok(again) => assert_eq!(again.plan, file.plan, "{printed}"),
                Err(faults) => panic!("{faults:?}\n{printed}"),
            }
            for week in 0..file.plan.weeks.len() {
                for session in file.plan.sessions_of(week) {
                    let _ = file.plan.session(week, session);
                }
            }
        }
        Err(faults) => {
            assert!(!faults.is_empty());
            if let Ok(text) = std::str::from_utf8(bytes) {
                for fault in faults {
                    assert!(text.get(fault.span.clone()).is_some(), "{fault:?}");
                }
            }
        }
    }
});
