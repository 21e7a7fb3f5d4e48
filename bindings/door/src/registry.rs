//! The registry: every query with its ask and its answer, every command with its payload. Listed here once.
//!
//! A list is handed to another macro (`queries!(make)` calls `make! { … }`), which makes of it what it needs: the enum
//! and the dispatch here, the TypeScript map in `bin/export-types.rs`, typed methods in `layshaft-uniffi`.

/// Hands the list of queries to a macro: `method Variant(Ask) -> Answer;`.
#[macro_export]
macro_rules! queries {
    ($make:ident) => {
        $make! {
            /// The bikes on this device, and how the data is kept.
            shelf Shelf(BareAsk) -> ShelfAnswer;
            /// A damaged database that was set aside, to be taken out.
            set_aside SetAside(BareAsk) -> SetAsideAnswer;
            /// Accepted ranges, and what records are called.
            tables Tables(BareAsk) -> TablesAnswer;
            /// What to do next, what cures, when the bike will be ready.
            today Today(TodayAsk) -> TodayAnswer;
            /// The jobs on the calendar.
            plan Plan(PlanAsk) -> PlanAnswer;
            /// One job at the bench.
            job Job(IdAsk) -> JobAnswer;
            /// Jobs and packages that can be added as they are, and what suits the bike.
            ready_made ReadyMade(BareAsk) -> ReadyMadeAnswer;
            /// What a bike is started from: kinds to choose from, usual weeks.
            starting Starting(BareAsk) -> StartingAnswer;
            /// Ratios, speeds, chain and speedometer.
            gearing Gearing(GearingAsk) -> GearingAnswer;
            /// Every pair of sprockets that the bike takes, best first.
            sprocket_choice SprocketChoice(SprocketChoiceAsk) -> SprocketChoiceAnswer;
            /// How far a chain is worn, its tight spot, where the axle goes.
            chain_wear ChainWear(ChainWearAsk) -> ChainWearAnswer;
            /// Thrust in each gear, resistance, top speed.
            thrust Thrust(ThrustAsk) -> ThrustAnswer;
            /// Electrical load against output.
            load Load(LoadAsk) -> LoadAnswer;
            /// What lamps, horn and ignition usually draw, to choose from.
            usual_consumers UsualConsumers(BareAsk) -> UsualAnswer;
            /// A brake: pressure, clamp, lever travel, stopping.
            brakes Brakes(BrakeAsk) -> BrakeAnswer;
            /// A tyre: its sidewall in words, load, speed, age, and what another one changes.
            tyres Tyres(TyreAsk) -> TyreAnswer;
            /// A thread: which one, what torque, how deep.
            fasteners Fasteners(FastenerAsk) -> FastenerAnswer;
            /// A filling, poured with the cups at hand.
            filling Filling(FillAsk) -> FillAnswer;
            /// Premix, two-part ratios, paint for an area.
            mixing Mixing(MixAsk) -> MixAnswer;
            /// A wire and its fuse: drop, rating, the smallest that serve.
            wire Wire(WireAsk) -> WireAnswer;
            /// A lamp, flasher and pilot: standard, fitted, proposed and the cures.
            lamps Lamps(LampsAsk) -> LampAnswer;
            /// The charging tests: rested, idle, at speed; drain, charge and time to flat.
            charging Charging(ChargingAsk) -> ChargingAnswer;
            /// A circuit of the bike: what it does in a switch position, with a fault tried, and its drawing.
            harness Harness(HarnessAsk) -> HarnessAnswer;
            /// A search for a fault: the next check and why, suspects, evidence.
            fault Fault(FaultAsk) -> FaultAnswer;
            /// A cure.
            cure Cure(CureAsk) -> CureAnswer;
            /// A paint job in several coats: which is next, from when and until when.
            process Process(ProcessAsk) -> ProcessAnswer;
            /// Coating products to start from.
            products Products(BareAsk) -> ProductsAnswer;
            /// The walk-through and its summary.
            inspection Inspection(InspectionAsk) -> InspectionAnswer;
            /// What a proposal does to everything else.
            ripple Ripple(RippleAsk) -> RippleAnswer;
            /// What came of what was found: its job, its parts, where its photos are kept.
            found Found(FoundAsk) -> FoundAnswer;
            /// What is still to come: cures, waits, parcels.
            alarms Alarms(BareAsk) -> AlarmsAnswer;
            /// A calendar file with entries in words.
            calendar Calendar(CalendarAsk) -> CalendarAnswer;
            /// Everything known about the open bike.
            bike Bike(BareAsk) -> BikeAnswer;
            /// What was put away and can come back.
            put_away PutAway(BareAsk) -> PutAwayAnswer;
            /// Every value that a record has had.
            history History(HistoryAsk) -> HistoryAnswer;
            /// A photo with its bytes.
            photo Photo(IdAsk) -> PhotoAnswer;
            /// One formula with numbers given by hand.
            evaluate Evaluate(EvaluateAsk) -> Figures;
            /// Every formula with its symbols, ranges and source.
            handbook Handbook(BareAsk) -> HandbookAnswer;
            /// The open bike as a bundle.
            bundle Bundle(BareAsk) -> BundleAnswer;
        }
    };
}

/// Hands the list of commands to a macro: `method Variant;` where the payload is the struct of the same name.
#[macro_export]
macro_rules! commands {
    ($make:ident) => {
        $make! {
            /// Starts a bike and opens it.
            start_bike StartBike;
            /// Says what kind of bike it is, with what is usual on such a bike.
            describe_kind DescribeKind;
            /// Puts an invented bike on the shelf and opens it.
            load_demo LoadDemo;
            /// Opens a bike of the shelf.
            open_bike OpenBike;
            /// Puts a bike away; its facts stay.
            put_bike_away PutBikeAway;
            /// Brings a bike back.
            bring_bike_back BringBikeBack;
            /// Brings back what was put away.
            bring_back BringBack;
            /// Says who the bike is.
            describe_bike DescribeBike;
            /// Says where it stands.
            describe_place DescribePlace;
            /// Records the drive train.
            record_drive RecordDrive;
            /// Records a wheel.
            record_wheel RecordWheel;
            /// Records battery and alternator.
            record_supply RecordSupply;
            /// Records a consumer.
            record_consumer RecordConsumer;
            /// Takes a consumer off.
            remove_consumer RemoveConsumer;
            /// Records a brake.
            record_brake RecordBrake;
            /// Records a filling.
            record_fluid RecordFluid;
            /// Fits other sprockets.
            fit_sprockets FitSprockets;
            /// Fits another consumer.
            fit_consumer FitConsumer;
            /// Fits other parts in a brake.
            fit_brake FitBrake;
            /// Fits another tyre, tube or rim.
            fit_tyre FitTyre;
            /// Records flasher, pilots and load resistors.
            record_indication RecordIndication;
            /// Fits another flasher, other pilots, load resistors.
            fit_flasher FitFlasher;
            /// Changes an element of a circuit, or adds one.
            adapt_circuit AdaptCircuit;
            /// Begins a search for a fault.
            start_fault StartFault;
            /// Answers a check of a search.
            answer_fault AnswerFault;
            /// Takes the last answer of a search back.
            undo_fault_step UndoFaultStep;
            /// Ends a search.
            close_fault CloseFault;
            /// Adds a job.
            add_job AddJob;
            /// Adds a ready-made job.
            add_ready_made AddReadyMade;
            /// Adds every job of some packages that suits the bike and is not in its plan.
            add_packages AddPackages;
            /// Makes a job of what was found.
            put_right PutRight;
            /// Puts the part for what was found on the list.
            want_part WantPart;
            /// Changes a job.
            change_job ChangeJob;
            /// Puts a job away.
            put_job_away PutJobAway;
            /// Begins a job.
            begin_job BeginJob;
            /// Ticks steps of a job off.
            tick_step TickStep;
            /// Finishes a job.
            finish_job FinishJob;
            /// Puts a tool that is not at hand on the list of parts of a job.
            lack_tool LackTool;
            /// Opens a finished job again.
            reopen_job ReopenJob;
            /// Records a part.
            record_part RecordPart;
            /// Puts a part away.
            put_part_away PutPartAway;
            /// Records the maker's torque of a joint.
            record_tightening RecordTightening;
            /// Puts a torque away.
            put_tightening_away PutTighteningAway;
            /// Keeps a photo of something.
            attach_photo AttachPhoto;
            /// Puts a photo away.
            put_photo_away PutPhotoAway;
            /// Puts a coat on and starts its clock.
            start_cure StartCure;
            /// Ends the clock of a coat.
            end_cure EndCure;
            /// Says where a coat stands from now on.
            move_coat MoveCoat;
            /// Starts a paint job in several coats.
            start_process StartProcess;
            /// Lays the next coat or decal of a paint job.
            lay_coat LayCoat;
            /// Notes that the topmost coat was sanded.
            sand_coat SandCoat;
            /// Ends a paint job before its time.
            end_process EndProcess;
            /// Notes temperature and humidity.
            note_climate NoteClimate;
            /// Takes a reading.
            take_reading TakeReading;
            /// Answers an inspection item.
            answer_item AnswerItem;
            /// Sets the weekly bench time.
            set_bench_time SetBenchTime;
            /// Takes a command back.
            undo Undo;
            /// Lets the value that lost a concurrent edit hold after all.
            settle Settle;
            /// Notes that the open bike was carried out as a bundle.
            note_export NoteExport;
            /// Takes a bundle in.
            receive_bundle ReceiveBundle;
        }
    };
}
