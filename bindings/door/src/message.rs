//! What the door says when it refuses.

use layshaft_core::message::{Declared, List, Measure};
use layshaft_wire::message;

/// What the door says, and what the hosts around it say.
pub const MESSAGES: &[&[Declared]] = &[DoorMessage::DECLARED, HostMessage::DECLARED];

/// Why a call is refused.
#[message("door")]
pub(crate) enum DoorMessage {
    /// A call without a usable id.
    CallId,
    /// A call that cannot be read.
    NotUnderstood { reason: String },
    /// Asked of a bike where none is open.
    NoBikeOpen,
    /// No damaged file.
    NothingSetAside,
    /// A photo whose file is elsewhere.
    NoPhotoBytes,
    /// A command that changed nothing or is not known.
    NothingToUndo,
    /// A value that is not there to settle.
    NoSuchLoss,
    /// A bundle of a bike that is not here.
    AnotherBike { name: String },
    /// A bike, as what is not there.
    WhatBike,
    /// A ready-made job, as what is not there.
    WhatReadyMade,
    /// A package of ready-made jobs, as what is not there.
    WhatPackage,
    /// A job that a package does not hold, as what is not there.
    WhatPackageJob,
    /// Packages of which everything is there or does not suit.
    PackageIsThere { packages: List },
    /// Packages of which everything that could be added is left out.
    PackageLeftOut { packages: List },
    /// No package is named.
    NoPackageNamed,
    /// A job that needs a name.
    JobNeedsTitle,
    /// What was found has a job already.
    PutRightAlready { job: String },
    /// A job that is there takes something more on.
    TakesOn { job: String },
    /// Nobody has an estimate of a new job.
    MinutesAssumed { minutes: Measure },
    /// Parts that came on the list with a job.
    PartsWanted { parts: List },
    /// A part with its size.
    PartWithSize { part: String, size: String },
    /// What the jobs of a package come to follow.
    PackageFollows { before: List },
    /// A pack of an inspection, as what is not there.
    WhatPack,
    /// An item of an inspection, as what is not there.
    WhatItem,
    /// A finding from which no work follows, as what is not there.
    WhatFinding,
    /// A change of something that the bike has not, as what is not there.
    WhatChange,
    /// What was found has its parts on the list already.
    PartWantedAlready { part: String },
    /// A role that another consumer has, or of which it is a part.
    RoleTaken { other: String },
    /// A job that would come to follow itself.
    CannotFollow { job: String, other: String },
    /// A job whose forerunner was put away and that now follows others.
    FollowsNow { job: String, before: List },
    /// A job whose forerunner was put away and that follows nothing else through it.
    FollowsNothing { job: String, away: String },
    /// A kind of record that is never put away, as what is not there.
    WhatAway,
    /// A tool that the job does not need.
    NoSuchTool { job: String, tool: String },
    /// A tool that is to be bought already.
    ToolListed { tool: String },
    /// A part that is fitted with a job that does not need it.
    NotItsPart { job: String, part: String },
    /// A job that is opened again while its coat cures.
    ClockGoesOn { coat: String },
    /// A paint job with nothing left to lay.
    AllOn,
    /// The job that is there is done in these coats.
    HasTheseCoats { job: String },
    /// Coats without a job got one.
    JobForCoats { job: String },
    /// Other coats for a job that has some on.
    CoatsUnderWay { job: String },
    /// A clock for a job whose coats have clocks of their own.
    CoatsToCome { next: String },
    /// A coat that is too soft; what follows says until when.
    TooSoft,
    /// A paint job without a coat to sand.
    NothingToSand,
    /// A coat older than the one under it.
    BeforeWhatLiesBelow,
    /// A demo that names what is not there.
    DemoProduct { product: String },
}

/// Why a host cannot reach the bench: the browser, the window, a script.
#[message("host")]
pub enum HostMessage {
    /// A mark of a device that cannot be read.
    DeviceMark {
        /// What was given.
        text: String,
    },
    /// A call before the database is open.
    NotOpen,
    /// A folder for the database that cannot be made.
    NoFolder {
        /// The folder.
        folder: String,
        /// What the system says.
        reason: String,
    },
    /// A call after one that broke off.
    BrokeOff,
}
